/** The study of sizes: followed, ended, kept, gone on with; another engine begins anew. Answers are invented. */
import { beforeEach, describe, expect, it, vi } from 'vitest';
import { choiceNow, readChoice, useChoice } from '../../../src/app/forecast/sizes/choice';
import { mapOf } from '../../../src/app/forecast/sizes/mapOf';
import { spreadOut } from '../../../src/app/forecast/sizes/spreadOut';
import {
  type Keeping,
  NO_STUDY,
  recallStudy,
  runStudy,
  type StudyWish,
  stopStudy,
  useStudy,
} from '../../../src/app/forecast/sizes/study';
import type { SpeedJob, Team } from '../../../src/pulse/forecast/job';
import { titled } from '../designs';
import { answerOf, ENGINE, pathOf } from './fixtures';

const SIZES = [500, 700, 900].map((length) => ({
  arrangement: 'all-into-one' as const,
  length,
  outsideDiameter: 40,
  wall: 1.5,
  outlet: null,
}));
const wish = (stroke = ENGINE.stroke): StudyWish => ({
  id: 'd',
  design: { ...titled('Study'), engine: { cylinders: 2, bore: 80, stroke: 80 } },
  engine: { ...ENGINE, stroke },
  sizes: SIZES,
  pathOf: ({ length }) => pathOf(length / 1000),
});

let jobs: SpeedJob[];
let held: Map<string, string>;
const keeping: Keeping = {
  read: async (id, engine) => held.get(`${id} ${engine}`) ?? held.get(id) ?? null,
  write: async (id, engine, text) => void held.set(`${id} ${engine}`, text),
};
/** The longer the primary the more torque; told one at a time until stopped. */
const team = (most = Number.POSITIVE_INFINITY): Team => ({
  async follow(given, tell, stopped = () => false) {
    for (const [k, job] of given.entries()) {
      if (stopped() || k >= most) return;
      jobs.push(job);
      tell(k, answerOf(job.rpm, { torque: 100 * job.path.pipes[0]!.length + (job.cell === 0.01 ? 1 : 0) }));
      await Promise.resolve();
    }
  },
});
/** Stopped by hand at the seventh answer. */
const stopping = (): Team => ({
  follow: (given, tell, stopped) =>
    team().follow(
      given,
      (k, answer) => {
        tell(k, answer);
        if (k === 6) stopStudy();
      },
      stopped,
    ),
});
const now = () => useStudy.getState();

beforeEach(() => {
  jobs = [];
  held = new Map();
  stopStudy();
  useStudy.setState(NO_STUDY);
  useChoice.setState({ of: null, choice: {} });
});

describe('a study', () => {
  it('follows every size on coarse cells, checks three again on fine ones, and is kept', async () => {
    await runStudy(wish(), team(), keeping);
    expect(now()).toMatchObject({ done: 18, all: 18, running: false, checking: false, trouble: null });
    expect(jobs.filter(({ cell }) => cell === 0.02)).toHaveLength(18);
    expect(jobs.filter(({ cell }) => cell === 0.01)).toHaveLength(18);
    expect([...held.values()].join()).toContain('"evenrun-study"');
    const [map] = mapOf(now().found!, wish().design, wish().engine);
    expect(map!.cells.map(({ length }) => length).sort()).toEqual([0.5, 0.7, 0.9]);
    expect(map!.cells.find(({ length }) => length === 0.9)!.torque).toBeCloseTo(90, 6);
    const lengths = map!.rules.flatMap(({ length }) => length ?? []);
    expect(lengths.length).toBeGreaterThan(1);
    for (const { low, middle, high } of lengths) expect(low <= middle && middle <= high && low > 0.1).toBe(true);
  });

  it('that is stopped keeps what it has, and goes on with the rest alone', async () => {
    await runStudy(wish(), stopping(), keeping);
    expect(now().running).toBe(false);
    expect(jobs).toHaveLength(7);
    useStudy.setState(NO_STUDY);
    await recallStudy(wish(), keeping);
    expect(now()).toMatchObject({ done: 7, all: 18, running: false });
    jobs = [];
    await runStudy(wish(), team(), keeping);
    expect(jobs.filter(({ cell }) => cell === 0.02)).toHaveLength(11);
  });

  it('gone on with right after a stop waits until what was found is written', async () => {
    let write: () => void = () => {};
    const slow: Keeping = {
      ...keeping,
      write: (id, engine, text) =>
        new Promise((done) => {
          write = () => done(void held.set(`${id} ${engine}`, text));
        }),
    };
    const first = runStudy(wish(), stopping(), slow);
    await vi.waitFor(() => expect(now().running).toBe(false));
    const second = runStudy(wish(), team(), keeping);
    await Promise.resolve();
    write();
    await Promise.all([first, second]);
    // None of the seven is followed twice.
    expect(jobs.filter(({ cell }) => cell === 0.02)).toHaveLength(18);
    expect(now()).toMatchObject({ done: 18, running: false });
  });

  it('of another engine begins anew, and text that is no study is passed over', async () => {
    await runStudy(wish(), team(), keeping);
    await recallStudy(wish(0.09), keeping);
    expect(now().found).toBe(null);
    held.clear();
    held.set('d', 'not a study');
    await recallStudy(wish(), keeping);
    expect(now()).toEqual(NO_STUDY);
  });

  it('with more outlets follows the new ones alone, and has a map of each', async () => {
    await runStudy(wish(), team(), keeping);
    jobs = [];
    const outlets = [46, 60];
    const more: StudyWish = {
      ...wish(),
      sizes: outlets.flatMap((outlet) => SIZES.map((size) => ({ ...size, outlet }))),
      // 46 mm is what was drawn: the same pipes, by another name.
      pathOf: ({ length, outlet }) => pathOf(length / 1000 + (outlet === 46 ? 0 : 0.001)),
      choice: { outlets },
    };
    await recallStudy(more, keeping);
    expect(now()).toMatchObject({ done: 18, all: 36 });
    await runStudy(more, team(), keeping);
    expect(jobs.filter(({ cell }) => cell === 0.02)).toHaveLength(18);
    const maps = mapOf(now().found!, more.design, more.engine);
    expect(maps.map(({ key, outlet, cells }) => [key, outlet, cells.length])).toEqual([
      ['all-into-one', 0.046, 3],
      ['all-into-one', 0.06, 3],
    ]);
    // Back to what was asked first: all of it is there still.
    await recallStudy(wish(), keeping);
    expect(now()).toMatchObject({ done: 18, all: 18 });
  });

  it('that was asked for by somebody is asked for again when the design is opened anew', async () => {
    const choice = { lengths: [500, 700], outlets: [46] };
    await runStudy({ ...wish(), choice }, team(), keeping);
    useChoice.setState({ of: null, choice: {} });
    await recallStudy(wish(), keeping);
    expect(choiceNow('d')).toEqual(choice);
    expect(choiceNow('other')).toEqual({});
    // What cannot be is as usual.
    expect(readChoice({ lengths: [500, '600'], bores: [5], arrangements: ['all'], outlets: [50] })).toEqual({
      outlets: [50],
    });
    expect([null, 3, 'x', {}].map(readChoice)).toEqual([{}, {}, {}, {}]);
  });

  it('of an engine that is tried for a while is not lost', async () => {
    await runStudy(wish(), team(), keeping);
    await runStudy(wish(0.09), team(7), keeping);
    await recallStudy(wish(), keeping);
    expect(now()).toMatchObject({ done: 18, all: 18 });
    await recallStudy(wish(0.09), keeping);
    expect(now()).toMatchObject({ done: 7, all: 18 });
  });

  it('that cannot be kept says so and goes on', async () => {
    const full: Keeping = { ...keeping, write: () => Promise.reject(new Error('full')) };
    await runStudy(wish(), team(), full);
    expect(now().trouble).toMatch(/not kept in this browser: .*full/);
    expect(now().done).toBe(18);
  });
});

it('sizes are tried from the middle outward over the whole map, each once', () => {
  const sizes = ['all-into-one', 'pairs-then-one'].flatMap((arrangement) =>
    [38, 42, 45, 48].flatMap((outsideDiameter) =>
      [500, 600, 700, 800, 900].map((length) => ({ ...SIZES[0]!, arrangement, length, outsideDiameter }) as const),
    ),
  ) as unknown as typeof SIZES;
  const order = spreadOut(sizes);
  expect(new Set(order).size).toBe(sizes.length);
  const first = order.slice(0, 8);
  expect(new Set(first.map(({ arrangement }) => arrangement)).size).toBe(2);
  expect(new Set(first.map(({ length }) => length))).toContain(500);
  expect(new Set(first.map(({ length }) => length))).toContain(900);
  expect(order[0]!.length).toBe(700);
  expect(spreadOut(sizes)).toEqual(order);
});
