/** A run in slices: what is told on the way, what at the end however it comes, and that what is handed over is a copy. */
import { describe, expect, it } from 'vitest';
import type { Answer } from '../../../src/app/pulse/messages';
import { buffersOf, type Ground, rowsFor, runInSlices } from '../../../src/app/pulse/slices';
import { FlowStopped } from '../../../src/pulse/report';
import { startRig } from '../../../src/pulse/startRig';
import { fakeRunning, RIG } from './rigs';

/** Every look at the clock is `tick` ms later; `asks` counts how often the run let messages in. */
function bench(tick: number, change: Partial<Ground> = {}) {
  let clock = 0;
  const said: Answer[] = [];
  const seen = { breaths: 0, said };
  const ground: Ground = {
    start: fakeRunning,
    isStop: (error) => error instanceof FlowStopped,
    now: () => {
      clock += tick;
      return clock;
    },
    breathe: async () => {
      seen.breaths++;
    },
    ...change,
  };
  const run = (isEnded: () => boolean = () => false) =>
    runInSlices({ rig: RIG, pictureRows: 11 }, ground, isEnded, (answer) => said.push(answer)).then(() => seen);
  return { run, seen };
}

describe('a run in slices', () => {
  it('tells the rig, how far it is, pictures on the way that grow, and at last the whole', async () => {
    const { said, breaths } = await bench(60).run();
    expect(said[0]).toEqual({ begun: true });
    const shares = said.flatMap((a) => ('soFar' in a ? [a.progress.time / a.progress.duration] : []));
    expect(shares.length).toBeGreaterThan(3);
    expect([...shares].sort((a, b) => a - b)).toEqual(shares);
    const rows = said.flatMap((a) => ('soFar' in a && a.soFar ? [a.soFar.picture!.times.length] : []));
    expect(rows.length).toBeGreaterThan(1);
    expect(rows.length).toBeLessThan(shares.length);
    expect(rows.at(-1)).toBeGreaterThan(rows[0]!);
    const last = said.at(-1)!;
    expect('run' in last && last.ending).toEqual({ how: 'whole' });
    expect('run' in last && last.run.time).toBe(RIG.duration);
    expect(breaths).toBeGreaterThan(5);
  });

  it('takes fewer steps at once where they take long, so that it is heard', async () => {
    const slow = await bench(200).run();
    const fast = await bench(1).run();
    expect(slow.breaths).toBeGreaterThan(4 * fast.breaths);
  });

  it('ended, hands over what there is', async () => {
    const { run, seen } = bench(60);
    await run(() => seen.breaths >= 3);
    const last = seen.said.at(-1)!;
    expect('run' in last && last.ending).toEqual({ how: 'ended' });
    expect('run' in last && last.run.time).toBeGreaterThan(0);
    expect('run' in last && last.run.time).toBeLessThan(RIG.duration);
    expect(seen.breaths).toBe(3);
  });

  it('where the flow cannot be followed, keeps what came before and says why', async () => {
    const error = new FlowStopped(0.004, 'a', 3, 0.35, 'no pressure');
    const { said } = await bench(60, { start: (rig, options) => fakeRunning(rig, options, { step: 40, error }) }).run();
    const last = said.at(-1)!;
    expect('run' in last && last.ending).toEqual({ how: 'stopped', why: error.message });
    expect('run' in last && last.run.time).toBeCloseTo(0.004, 12);
    expect(error.message).toContain('cell 4 of pipe "a"');
  });

  it('broken, tells what broke', async () => {
    const error = new TypeError('x is not a function');
    const broken = await bench(1, { start: (rig, options) => fakeRunning(rig, options, { step: 0, error }) }).run();
    expect(broken.said).toEqual([{ begun: true }, { failed: 'x is not a function' }]);
  });
});

it('a rig of very many cells gets fewer rows of its picture, never none', () => {
  const [pipe] = RIG.pipes;
  const rows = (cells: number) => rowsFor({ pipes: [{ ...pipe!, cells }, pipe!], ends: [] }, 480);
  expect(rows(500)).toBe(480);
  expect(rows(99_990)).toBe(100);
  expect(rows(1e9)).toBe(2);
});

it('what is handed over is the run’s own, each array named once, and the run goes on in others', () => {
  const running = startRig(RIG, { pictureRows: 20 });
  running.advance(5);
  const first = running.result();
  const buffers = buffersOf(first);
  expect(new Set(buffers).size).toBe(buffers.length);
  const another = new Set(buffersOf(running.result()));
  expect(buffers.filter((buffer) => another.has(buffer))).toEqual([]);
  const rows = first.times.length;
  const { times } = structuredClone(first, { transfer: buffers });
  expect(times.length).toBe(rows);
  expect(first.times.length).toBe(0);
  while (!running.advance(100));
  expect(running.result().picture!.pipes[0]!.x.length).toBe(RIG.pipes[0]!.cells);
});
