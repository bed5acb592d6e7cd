/** verb-nurbs where it has to run: here, and in a Node worker thread, without a word on standard output. */
import { once } from 'node:events';
import { fileURLToPath } from 'node:url';
import { Worker } from 'node:worker_threads';
import { expect, test, vi } from 'vitest';
import { loadVerb } from '../../../geometry/nurbs/verb';

const file = new URL('../../../node_modules/verb-nurbs/build/js/verb.es.js', import.meta.url);

test('loads once and says nothing, and leaves what others say alone', async () => {
  const said = vi.spyOn(console, 'log').mockImplementation(() => {});
  const [first, second] = await Promise.all([loadVerb(), loadVerb()]);
  expect(first).toBe(second);
  expect(said).not.toHaveBeenCalled();
  console.log('heard');
  expect(said).toHaveBeenCalledWith('heard');
  said.mockRestore();
});

test('loads in a worker thread', async () => {
  const code = `
    const { parentPort } = require('node:worker_threads');
    import(${JSON.stringify(file.href)}).then(
      ({ default: verb }) => parentPort.postMessage(typeof verb.eval.Eval.rationalSurfacePoint),
      (error) => parentPort.postMessage(String(error)),
    );`;
  const worker = new Worker(code, { eval: true, stdout: true });
  const [answer] = await once(worker, 'message');
  expect(answer).toBe('function');
  await worker.terminate();
});

test('what verb imports to start workers is our own stand-in', async () => {
  const { default: json } = await import('../../../node_modules/web-worker/package.json', { with: { type: 'json' } });
  expect(json.exports).toBe('./index.js');
  expect(fileURLToPath(file)).toContain('verb.es.js');
});
