/** What a plate's outline owes: the border all round, room for welds, a web between ports, and no corner. By sampling. */
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import {
  edges,
  flangePlan,
  isInLoop,
  leastGap,
  loopArea,
  meetings,
  type Point2,
  resolveHeader,
  sampleLoop,
  selfCrossing,
} from '../../../geometry';
import { parseDesign } from '../../../shared/design/parse';
import { random } from '../../random';
import { sharpest } from '../plane/sharpest';
import { type Asked, PAIRED, planOf, plateOf, ROW } from './flanges';

/** Least distance from the outline's points to a circle, or to sampled points: metal left between. */
const metal = (outline: readonly Point2[], [x, y]: Point2, radius: number): number =>
  Math.min(...outline.map((p) => Math.hypot(p[0] - x, p[1] - y))) - radius;

const shapes: readonly (readonly [string, Asked, number])[] = [
  ['two ports, two studs each', PAIRED, 8],
  ['a row with studs above and below', ROW, 8],
  ['a border of its own', { ...PAIRED, flange: { border: 11 } }, 11],
  ['thin plate, its border by practice', { ...PAIRED, flange: { thickness: 8 } }, 6.4],
  ['stepped', { ...PAIRED, flange: { seat: 'stepped' } }, 8],
  ['oval ports', { ...PAIRED, opening: { shape: 'oval', width: 30, height: 40 } }, 8],
  ['rectangular ports', { ...ROW, opening: { shape: 'rounded-rectangle', width: 34, height: 38, corner: 6 } }, 8],
  ['sharp corners', { ...ROW, opening: { shape: 'rounded-rectangle', width: 30, height: 38, corner: 0 } }, 8],
  ['no tubes', { ...ROW, tubes: false }, 8],
  ['one port, two studs', { ports: 1, studs: [[-38, 0], [38, 0]] }, 8],
  ['one port, three studs', { ports: 1, studs: [[0, 36], [32, -20], [-32, -20]] }, 8],
  ['no studs', {}, 8],
]; // biome-ignore format: one line a case

describe.each(shapes)('%s', (_, asked, border) => {
  const plate = plateOf(asked);
  const outline = sampleLoop(plate.outline, 0.0005);

  test('the border holds all round, and somewhere no more than asked for', () => {
    const left = [
      ...plate.holes.map((h) => metal(outline, h.centre, h.diameter / 2)),
      ...plate.openings.map(({ loop }) => Math.min(...sampleLoop(loop, 0.01).map((p) => metal(outline, p, 0)))),
    ];
    expect(Math.min(...left)).toBeGreaterThan(border - 0.005);
    if (plate.steps.length === 0) expect(Math.min(...left)).toBeLessThan(border + 0.05);
    for (const { loop } of plate.steps) expect(leastGap(edges(loop), edges(plate.outline)).gap).toBeCloseTo(border, 6);
  });

  test('smooth, simple, counter-clockwise, round every opening and hole', () => {
    expect(sharpest(plate.outline)).toBeLessThan(1e-6);
    expect(selfCrossing(plate.outline)).toBeNull();
    expect(loopArea(plate.outline)).toBeGreaterThan(0);
    for (const { loop } of plate.openings)
      expect(isInLoop([loop[0]![0], loop[0]![1]], edges(plate.outline))).toBe(true);
    for (const { centre } of plate.holes) expect(isInLoop(centre, edges(plate.outline))).toBe(true);
  });

  test('nothing to remark', () => expect(planOf(asked).warnings).toEqual([]));
});

test('between ports it is waisted, down to two fifths of its height at them', () => {
  const { outline } = plateOf({
    ...PAIRED,
    pitch: 140,
    studs: [
      [-38, 0],
      [38, 0],
      [102, 0],
      [178, 0],
    ],
  });
  const top = (x: number): number =>
    Math.max(
      ...edges(outline).flatMap((e) => meetings({ from: [x, -99], to: [x, 99], arc: null }, e).map(({ at }) => at[1])),
    );
  // Opening 18 and border 8: 26 high over the port. A stud's boss: 4.5 and 8.
  expect(top(0)).toBeCloseTo(26, 9);
  expect(top(-70)).toBeCloseTo(0.4 * 26, 9);
  expect(top(-38)).toBeGreaterThan(12.5 - 1e-9);
  expect(top(-140)).toBeCloseTo(26, 9);
});

test.each([1, 2, 3, 4, 5, 6, 7, 8])('random flanges: the border holds on every one that is made, seed %i', (seed) => {
  const draw = random(seed);
  let made = 0;
  for (let round = 0; round < 12; round++) {
    const ports = draw.whole(1, 5);
    const pitch = draw.between(70, 120);
    const rectangular = draw() < 0.5;
    const opening = rectangular
      ? ({ shape: 'rounded-rectangle', width: draw.between(24, 34), height: draw.between(24, 40), corner: draw.between(0, 12) } as const)
      : ({ shape: 'round', diameter: draw.between(26, 40) } as const); // biome-ignore format: one line a shape
    const border = draw.between(5, 14);
    const studs = Array.from({ length: 2 * ports + 2 }, (_, k) => [(k / 2 - 0.5) * pitch + draw.between(-6, 6), (k % 2 === 0 ? 1 : -1) * draw.between(22, 40)] as const); // biome-ignore format: one line
    const asked: Asked = { ports, pitch, opening, studs, flange: { border }, tubes: draw() < 0.5 };
    const { plates, notMade } = planOf(asked);
    if (plates.length === 0) {
      expect(notMade.every((r) => /runs into|lies under|cuts the plate/.test(r.message))).toBe(true);
      continue;
    }
    made++;
    const [plate] = plates;
    const edge = edges(plate!.outline);
    expect(sharpest(plate!.outline)).toBeLessThan(1e-6);
    expect(selfCrossing(plate!.outline)).toBeNull();
    const outline = sampleLoop(plate!.outline, 0.001);
    for (const h of plate!.holes) {
      expect(isInLoop(h.centre, edge)).toBe(true);
      expect(metal(outline, h.centre, h.diameter / 2)).toBeGreaterThan(border - 0.01);
    }
    for (const { loop } of plate!.openings)
      for (const p of sampleLoop(loop, 0.05)) expect(metal(outline, p, 0)).toBeGreaterThan(border - 0.01);
  }
  expect(made).toBeGreaterThan(2);
});

const examples = readdirSync('public/examples').filter((name) => name.endsWith('.evenrun.json'));

test.each(examples)('the example %s: its flanges are made, nothing remarked', (name) => {
  const header = resolveHeader(parseDesign(readFileSync(`public/examples/${name}`, 'utf8')));
  expect(header.design.flanges!.length).toBeGreaterThan(0);
  for (const flange of header.design.flanges!) {
    const { plates, notMade, warnings } = flangePlan(header, flange);
    expect([...notMade, ...warnings]).toEqual([]);
    expect(plates).toHaveLength(1);
    expect(sharpest(plates[0]!.outline)).toBeLessThan(1e-6);
  }
});
