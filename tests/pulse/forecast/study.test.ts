/** A study with an invented engine: its sizes, its answers whatever the team, going on with it, what it says and what it refuses. */
import { describe, expect, test } from 'vitest';
import { sizingFromDesign } from '../../../shared/engine/sizing/fromDesign';
import { readCsv } from '../../../src/formats/csv/readCsv';
import { chooseSize } from '../../../src/pulse/forecast/chooseSize';
import { studyCsv } from '../../../src/pulse/forecast/csv';
import { engineHash } from '../../../src/pulse/forecast/hash';
import type { SpeedJob, Team } from '../../../src/pulse/forecast/job';
import { beginStudy } from '../../../src/pulse/forecast/study';
import { readStudy, resumeNotes, writeStudy } from '../../../src/pulse/forecast/studyFile';
import { checkedKeys, gridError, ranked } from '../../../src/pulse/forecast/studyRank';
import {
  boreOf,
  keyOf,
  outletsAround,
  type StudySize,
  sketchOf,
  studySizes,
} from '../../../src/pulse/forecast/studySizes';
import { designIn, fakeTeam, inventedTorque } from './fakes';
import { begin, CHOICE, design, engine, pathOf, plan, whole } from './studied';

/** One that does jobs in order. */
const inOrder: Team = {
  follow: async (jobs, tell) => {
    for (let k = 0; k < jobs.length; k++) await fakeTeam().follow([jobs[k]!], (_, answer) => tell(k, answer));
  },
};

describe('sizes', () => {
  test('usual ones: six lengths about the rule of thumb, four tubes on sale, two arrangements', () => {
    const sizes = studySizes(design, engine);
    expect(sizes).toHaveLength(48);
    expect(new Set(sizes.map(keyOf)).size).toBe(48);
    const all = sizes.filter(({ arrangement }) => arrangement === 'all-into-one');
    const lengths = [...new Set(all.map(({ length }) => length))];
    expect(lengths).toHaveLength(6);
    expect(lengths.at(-1)! / lengths[0]!).toBeCloseTo(1.3 / 0.7, 1);
    for (const { length } of sizes) expect(length % 5).toBe(0);
    expect(new Set(sizes.map(boreOf)).size).toBe(4);
  });

  test.each([41.275, 42.4, 47.625, 43, 60.3])(
    'tubes lie 2 mm apart at least, and the design’s own of %d mm is one of them',
    (outsideDiameter) => {
      const { tube } = design.runners.find(({ from }) => 'port' in from)!;
      const own = { ...design, tubes: { ...design.tubes, [tube]: { ...design.tubes[tube]!, outsideDiameter } } };
      for (const arrangement of ['all-into-one', 'pairs-then-one'] as const) {
        const sizes = studySizes(own, engine, { arrangements: [arrangement] });
        const tubes = [...new Set(sizes.map((size) => size.outsideDiameter))];
        expect(tubes).toHaveLength(4);
        expect(tubes).toContain(outsideDiameter);
        for (const [k, one] of tubes.entries()) expect(one - (tubes[k - 1] ?? 0)).toBeGreaterThanOrEqual(2);
      }
    },
  );

  test('chosen ones are taken as they are; an outlet multiplies them', () => {
    expect(plan.sizes).toHaveLength(6);
    expect(plan.sizes.map(boreOf)).toEqual([36, 36, 36, 40, 40, 40]);
    expect(studySizes(design, engine, { ...CHOICE, outlets: [50, 60] })).toHaveLength(12);
  });

  test('the sketch of a size has its length and bore, and the drawn collector', () => {
    const { primary, collector, secondary } = sketchOf(design, engine, plan.sizes[0]!);
    expect(primary).toEqual({ length: 500, bore: 36 });
    expect(collector.length).toBe(design.merges[0]!.length);
    expect(secondary).toBeUndefined();
    const pairs = sketchOf(design, engine, { ...plan.sizes[0]!, arrangement: 'pairs-then-one', outlet: 61 });
    expect(pairs.secondary!.length).toBeGreaterThan(0);
    expect(pairs.collector.bore).toBe(61);
  });
});

test('what neither the design nor any rule of thumb tells is refused by its place, and is no 0 mm', () => {
  // One pipe alone has nothing to join: no rule of thumb speaks of its collector.
  const [port] = design.ports;
  const { firingOrder: _, banks: __, ...rest } = design.engine!;
  const single = { ...design, engine: { ...rest, firingOrder: [1], banks: [[1]] }, ports: [{ ...port!, cylinder: 1 }] };
  const bare = { ...single, runners: [], merges: [] };
  const size = { ...plan.sizes[0]!, outlet: 45 };
  expect(() => sketchOf(bare, engine, size)).toThrow(
    /^exhaust\/sketch\/collector\/length: found nothing, and no rule of thumb for all-into-one; allowed: the length/,
  );
  const sketch = { arrangement: 'all-into-one' as const, primary: { length: 500, bore: 36 } };
  const told = { ...bare, exhaust: { sketch: { ...sketch, collector: { length: 120, bore: 50 } } } };
  expect(sketchOf(told, engine, size).collector).toEqual({ length: 120, bore: 45 });
});

test('the same bytes whatever the order in which answers come', async () => {
  const one = writeStudy(await whole(fakeTeam()));
  expect(writeStudy(await whole(inOrder))).toBe(one);
  expect(writeStudy(readStudy(one))).toBe(one);
});

test('ranked by area; best, middle and worst are followed again on fine cells', async () => {
  const study = await whole(fakeTeam());
  const sizes = ranked(study);
  expect(sizes.map(({ rank }) => rank)).toEqual([1, 2, 3, 4, 5, 6]);
  const means = sizes.map(({ summary }) => summary.mean!);
  expect(means).toEqual([...means].sort((a, b) => b - a));
  // 900 mm is tuned to 4000 rpm, in the middle of the band; 40 mm is what the engine likes.
  expect(keyOf(sizes[0]!.size)).toMatch(/900 mm of 4[0-9.]+ x/);
  expect(boreOf(sizes[0]!.size)).toBe(40);
  const error = gridError(study)!;
  expect(error.checks).toHaveLength(3);
  // Cells of 20 mm rather than 10 cost one N m everywhere in the invented engine.
  for (const { difference } of error.checks) expect(difference).toBeCloseTo(1, 9);
  expect(error.spread).toBeCloseTo(0, 9);
  expect(error.keepsOrder).toBe(true);
  const rows = readCsv(studyCsv(study));
  expect(rows.map(({ rank }) => rank)).toEqual(['1', '2', '3', '4', '5', '6']);
  expect(rows.filter((row) => row.mean_on_fine_cells_nm !== '')).toHaveLength(3);
  expect(rows[0]!.primary_length_mm).toBe('900.00000000');
});

test.each([0.005, 0.01, 0.03])('studied on cells of %f m, it is checked on cells half as long', async (cell) => {
  const study = beginStudy('four', engine, pathOf, { ...plan, cell });
  await study.follow(fakeTeam());
  const keys = checkedKeys(ranked(study.document()));
  const team = fakeTeam();
  expect(study.fineDone(keys)).toBe(0);
  await study.followFine(team, keys);
  expect(study.fineDone(keys)).toBe(12);
  expect(new Set(team.followed.map((job) => job.cell))).toEqual(new Set([cell / 2]));
  const document = study.document();
  expect(document.fine.cell).toBe(cell / 2);
  // The invented engine shows 0.1 N m less for each millimetre of a cell.
  for (const { difference } of gridError(document)!.checks) expect(difference).toBeCloseTo(50 * cell, 9);
});

test('interrupted and gone on with, it comes to the same, and follows nothing twice', async () => {
  let told = 0;
  const study = begin();
  await study.follow(
    fakeTeam(),
    () => void told++,
    () => told >= 10,
  );
  expect([study.done, study.all]).toEqual([10, 24]);
  const half = readStudy(writeStudy(study.document()));
  expect(ranked(half).some(({ rank }) => rank === null)).toBe(true);
  const rest = begin(half);
  const team = fakeTeam();
  await rest.follow(team);
  expect(team.followed).toHaveLength(14);
  await rest.followFine(team, checkedKeys(ranked(rest.document())));
  expect(writeStudy(rest.document())).toBe(writeStudy(await whole(fakeTeam())));
});

test('a size whose gas path is another now is followed again; what was found on that, and other sizes, are kept', async () => {
  const study = await whole(fakeTeam());
  const [first, ...others] = Object.keys(study.answers);
  const spoilt = { ...study.answers[first!]!, path: 'another' };
  const former = { ...study, answers: { ...study.answers, [first!]: spoilt, elsewhere: spoilt } };
  expect(resumeNotes(former, engineHash(engine), plan, begin().hashes)).toEqual([
    '1 of its 7 sizes are not asked for now: they are kept, and not ranked',
    '1 of its 7 sizes have another gas path now: they are followed again, and what was found on the other is kept',
  ]);
  const team = fakeTeam();
  const again = begin(former);
  await again.follow(team);
  expect(team.followed).toHaveLength(plan.speeds.length);
  expect(Object.keys(again.document().answers)).toEqual([
    ...[first, ...others],
    ...[`${first}, on gas path another`, 'elsewhere'],
  ]);
});

test('an edit that is taken back finds all that was followed before it', async () => {
  const study = await whole(fakeTeam());
  const longer = (size: StudySize) => pathOf({ ...size, length: size.length + 1 });
  const edited = beginStudy('four', engine, longer, plan, readStudy(writeStudy(study)));
  expect(edited.done).toBe(0);
  await edited.follow(fakeTeam());
  const back = begin(readStudy(writeStudy(edited.document())));
  expect([back.done, back.fineDone(checkedKeys(ranked(study)))]).toEqual([24, 12]);
  expect(ranked(back.document())).toEqual(ranked(study));
  // And forth again: nothing is followed twice, and what is kept does not grow.
  const forth = beginStudy('four', engine, longer, plan, back.document());
  expect(forth.done).toBe(24);
  expect(Object.keys(forth.document().answers)).toHaveLength(12);
  // What is kept of a size on another gas path is no other size.
  expect(resumeNotes(back.document(), engineHash(engine), plan, edited.hashes)).toEqual([]);
  const some = new Map([...edited.hashes].slice(2));
  expect(resumeNotes(back.document(), engineHash(engine), plan, some)).toEqual([
    '2 of its 6 sizes are not asked for now: they are kept, and not ranked',
  ]);
});

test('a size with a speed that fails is not ranked, and what failed is kept', async () => {
  const fails = (job: SpeedJob) =>
    job.rpm === 5000 && job.path.pipes[0]!.length < 0.6 ? 'stopped' : inventedTorque(job);
  const study = await whole(fakeTeam(fails));
  const failed = ranked(study).filter(({ rank }) => rank === null);
  expect(failed.map(({ size, summary }) => [size.length, summary.missing])).toEqual([
    [500, [5000]],
    [500, [5000]],
  ]);
});

test('gone on with, what failed is followed again, and nothing else', async () => {
  const study = begin();
  await study.follow(fakeTeam((job) => (job.rpm === 5000 ? 'stopped' : inventedTorque(job))));
  expect(study.done).toBe(24);
  const rest = begin(readStudy(writeStudy(study.document())));
  expect(rest.done).toBe(18);
  const team = fakeTeam();
  await rest.follow(team);
  expect(team.followed.map(({ rpm }) => rpm)).toEqual([5000, 5000, 5000, 5000, 5000, 5000]);
  await rest.followFine(team, checkedKeys(ranked(rest.document())));
  expect(writeStudy(rest.document())).toBe(writeStudy(await whole(fakeTeam())));
});

describe('refused', () => {
  const text = async () => JSON.parse(writeStudy(await whole(fakeTeam())));
  const SIZE = { arrangement: 'all-into-one', length: 500, outsideDiameter: 40, wall: 1.5 };
  type Point = Record<string, unknown>;
  /** The first answer of all, alone and changed. */
  const row = (study: Record<string, unknown>, change: (point: Point) => unknown) => {
    const [first] = Object.values(study.answers as Record<string, { path: string; points: Point[] }>);
    return { ...study, answers: { x: { path: 'p', points: [change(first!.points[0]!)] } } };
  };

  test('another engine, and other cells, with the remedy', async () => {
    const study = readStudy(JSON.stringify(await text()));
    expect(() => resumeNotes(study, 'other', plan, begin().hashes)).toThrow(/^engine: found a study of another engine/);
    const fine = { ...plan, cell: 0.01 };
    expect(() => resumeNotes(study, engineHash(engine), fine, begin().hashes)).toThrow(
      /^cell: found 20 mm; allowed: 10 mm/,
    );
  });

  test.each<[string, (study: Record<string, unknown>) => unknown, RegExp]>([
    ['no study', () => [], /document: found \[\]; allowed: an object/],
    [
      'a design',
      (s) => ({ ...s, format: 'evenrun-design' }),
      /format: found "evenrun-design"; allowed: "evenrun-study"/,
    ],
    ['a later one', (s) => ({ ...s, version: 2 }), /version: found 2; allowed: 1; this file is from a newer/],
    ['sizes that are none', (s) => ({ ...s, sizes: [{ arrangement: 'all' }] }), /sizes\/0\/arrangement: found "all"/],
    ['speeds that are none', (s) => ({ ...s, speeds: ['fast'] }), /speeds\/0: found "fast"/],
    ['answers that are none', (s) => ({ ...s, answers: { x: { path: 'p' } } }), /answers\/x\/points: found nothing/],
    ['no sizes', (s) => ({ ...s, sizes: [3] }), /sizes\/0: found 3; allowed: a size, an object/],
    [
      'an outlet that is none',
      (s) => ({ ...s, sizes: [{ ...SIZE, outlet: 'wide' }] }),
      /sizes\/0\/outlet: found "wide"; allowed: a number above 0, or null/,
    ],
    [
      'a band turned round',
      (s) => ({ ...s, band: [6000, 3000] }),
      /band: found \[6000, 3000\]; allowed: two speeds, the lowest first/,
    ],
    [
      'a speed twice',
      (s) => ({ ...s, speeds: [3000, 3000] }),
      /speeds: found \[3000, 3000\]; allowed: speeds that rise/,
    ],
    ['no answers', (s) => ({ ...s, answers: 7 }), /answers: found 7; allowed: an object with the answers of each size/],
    [
      'nothing on fine cells',
      (s) => ({ ...s, fine: null }),
      /fine: found null; allowed: an object with cell and answers/,
    ],
    [
      'a row of words',
      (s) => row(s, () => 'none'),
      /answers\/x\/points\/0: found "none"; allowed: the answer at a speed/,
    ],
    [
      'torque in words',
      (s) => row(s, (p) => ({ ...p, torque: 'much' })),
      /points\/0\/torque: found "much"; allowed: a number/,
    ],
    ['no speed', (s) => row(s, ({ rpm: _, ...p }) => p), /points\/0\/rpm: found nothing; allowed: a number above 0/],
    [
      'a failure without words',
      (s) => row(s, () => ({ rpm: 3000, failed: 1 })),
      /points\/0\/failed: found 1; allowed: words/,
    ],
    [
      'torque changed by hand',
      (s) => row(s, (p) => ({ ...p, torque: 250 })),
      /points\/0\/power: found [\d.]+; allowed: [\d.]+ W, as 250 N m at 3000 rpm make: one of the three was changed/,
    ],
  ])('%s', async (_, spoil, message) => {
    const value = JSON.stringify(spoil(await text()));
    expect(() => readStudy(value)).toThrow(message);
    // Whatever the library would say for itself.
    expect(() => readStudy(value)).not.toThrow(/invalid|expected|received/i);
  });
});

describe('a size that is chosen', () => {
  const size = { ...plan.sizes[4]!, length: 712 };

  test('is the length of the primaries’ group and their tube; what is laid out stays', () => {
    const chosen = chooseSize(design, engine, size);
    const runner = design.runners.find(({ from }) => 'port' in from)!;
    expect(chosen.groups[runner.group!]!.length).toBe(712);
    expect(boreOf(chosen.tubes[runner.tube]!)).toBe(40);
    expect([chosen.runners, chosen.exhaust]).toEqual([design.runners, design.exhaust]);
  });

  test('has its outlet at the last collector, whose wall stays; without one the outlet stays as drawn', () => {
    const [before] = design.merges;
    const { collector } = sketchOf(design, engine, size);
    const wall = (before!.outletDiameter - collector.bore) / 2;
    expect(wall).toBeGreaterThan(0.5);
    const chosen = chooseSize(design, engine, { ...size, outlet: 61 });
    expect(chosen.merges).toEqual([{ ...before, outletDiameter: 61 + 2 * wall }]);
    expect(sketchOf(chosen, engine, size).collector.bore).toBe(61);
    expect(chooseSize(design, engine, size).merges).toEqual(design.merges);
    // Of pairs first, the last one alone.
    const pairs = designIn('public/examples/four-4-2-1.evenrun.json');
    const taken = chooseSize(pairs, engine, { ...size, arrangement: 'pairs-then-one', outlet: 61 });
    const changed = taken.merges.filter((merge, k) => merge.outletDiameter !== pairs.merges[k]!.outletDiameter);
    expect(pairs.merges.length).toBeGreaterThan(2);
    expect(changed.map(({ id }) => id)).toEqual([sizingFromDesign(pairs).collector]);
  });

  test('has outlets to offer: as drawn, and the tubes on sale beside it', () => {
    expect(outletsAround(51)).toEqual([47.8, 51, 54.15]);
    expect(outletsAround(51.3)[1]).toBe(51.3);
    expect(outletsAround(200)).toHaveLength(2);
  });

  test('is the sketch where runners are not laid out yet', () => {
    const unrouted = { ...design, runners: design.runners.map(({ points: _, radii: __, ...runner }) => runner) };
    expect(chooseSize(unrouted, engine, size).exhaust!.sketch!.primary).toEqual({ length: 712, bore: 40 });
    const bare = { ...design, runners: [], merges: [] };
    expect(chooseSize(bare, engine, size).exhaust!.sketch!.primary.length).toBe(712);
  });

  test('that is joined in another way than drawn is refused', () => {
    expect(() => chooseSize(design, engine, { ...size, arrangement: 'pairs-then-one' })).toThrow(
      /runners: found all-into-one, as drawn; allowed: pairs-then-one/,
    );
  });
});
