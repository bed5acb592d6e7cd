/** A page with one click on it: a cutting plan is asked of a worker, and one made on the page itself. Answers stand in the title. */
import { problem } from './problem';

const say = ({ value, bound, proved }: { value: number; bound: number; proved: boolean }) =>
  `${value} ${bound} ${proved}`;

document.body.append('ready');
document.body.addEventListener('click', async () => {
  const worker = new Worker(new URL('./nest.worker.ts', import.meta.url), { type: 'module' });
  const apart = new Promise<string>((done, failed) => {
    worker.onmessage = ({ data }) => done(say(data));
    worker.onerror = ({ message }) => failed(new Error(message));
  });
  worker.postMessage(problem);
  const { cutBars } = await import('../../../src/shop/nest/bars');
  document.title = `${say(await cutBars(problem))} / ${await apart}`;
});
