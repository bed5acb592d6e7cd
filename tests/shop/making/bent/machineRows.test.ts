/** Machine columns by hand: feeds, marks, dial, signs, stretch, trims; and against published bend data, keys in the tests. */
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import type { Vec3 } from '../../../../shared/vec3';
import { readCsv } from '../../../../src/formats/csv/readCsv';
import { machineSchedule } from '../../../../src/shop/machineSchedule';
import { published } from '../../../reference/published';
import { oneRunner } from '../../designs';
import { designOf, randomDesign, type Shape, tubesOf } from '../designs';

const close = (values: readonly number[], digits = 8): number[] => values.map((x) => expect.closeTo(x, digits));
const SHAPES: Shape[] = [
  { length: 100, rotation: 0, angle: 90, radius: 60 },
  { length: 50, rotation: -30, angle: 60, radius: 60 },
  { length: 40, rotation: -120, angle: 45, radius: 60 },
];
const QUARTER = 30 * Math.PI;

test('feeds, marks and lengths of a tube with trims and a stretch of 10 %', () => {
  const bender = { stretch: 10, clamp: 30, tail: 30 };
  const [tube] = tubesOf(designOf(SHAPES, 70, { tooling: { trimStart: 15, trimEnd: 25, bender } }));
  const arcs = [QUARTER, (QUARTER * 2) / 3, QUARTER / 2];
  const [a, b, c] = arcs as [number, number, number];
  const { fromStart, cutLength } = tube!;
  expect(fromStart.map(({ length }) => length)).toEqual(close([100, 50, 40, 70]));
  expect(fromStart.map(({ feed }) => feed)).toEqual(close([115, 50 - 0.1 * a, 40 - 0.1 * b, 95 - 0.1 * c]));
  const marks = [115, 165 + 0.9 * a, 205 + 0.9 * (a + b), 275 + 0.9 * (a + b + c)];
  expect(fromStart.map(({ mark }) => mark)).toEqual(close(marks));
  expect(fromStart.map(({ markEnd }) => markEnd)).toEqual(
    close([marks[0]! + 0.9 * a, marks[1]! + 0.9 * b, marks[2]! + 0.9 * c, marks[3]! + 25]),
  );
  expect(cutLength).toBeCloseTo(100 + 50 + 40 + 70 + 0.9 * (a + b + c) + 15 + 25, 8);
  expect(fromStart.map(({ grip }) => grip)).toEqual(close([115, 50, 40, 95]));
});

test('from its other end marks count from there, and both ends agree where each bend lies on the sawn tube', () => {
  for (let seed = 1; seed <= 40; seed++) {
    const tooling = { trimStart: 12, trimEnd: 31, bender: { stretch: 4 } };
    const [tube] = tubesOf(randomDesign(seed, { tooling }));
    const { fromStart, fromEnd, cutLength } = tube!;
    const bends = fromStart.length - 1;
    expect(fromEnd.at(-1)!.markEnd).toBeCloseTo(cutLength, 8);
    for (let k = 0; k < bends; k++) {
      const back = fromEnd[bends - 1 - k]!;
      expect(back.mark).toBeCloseTo(cutLength - fromStart[k]!.markEnd, 8);
      expect(back.markEnd).toBeCloseTo(cutLength - fromStart[k]!.mark, 8);
      expect([back.angle, back.set, back.radius]).toEqual([
        fromStart[k]!.angle,
        fromStart[k]!.set,
        fromStart[k]!.radius,
      ]);
    }
    // Carriage travel and nominal arcs are the whole sawn tube.
    const arcs = fromStart.reduce((sum, { radius, angle }) => sum + (radius * angle * Math.PI) / 180, 0);
    for (const rows of [fromStart, fromEnd])
      expect(rows.reduce((sum, { feed }) => sum + feed, 0) + arcs).toBeCloseTo(cutLength, 8);
  }
});

test('the dial adds up within a turn; left-handed, turns and dial go the other way and rotations stay', () => {
  const [right] = tubesOf(designOf(SHAPES, 70));
  expect(right!.fromStart.map(({ turn }) => turn)).toEqual(close([0, -30, -120, 0]));
  expect(right!.fromStart.map(({ dial }) => dial)).toEqual(close([0, 330, 210, 210]));
  const [left] = tubesOf(designOf(SHAPES, 70, { workshop: { rotation: 'left-handed' } }));
  expect(left!.fromStart.map(({ rotation }) => rotation)).toEqual(close([0, -30, -120, 0]));
  expect(left!.fromStart.map(({ turn }) => turn)).toEqual(close([0, 30, 120, 0]));
  expect(left!.fromStart.map(({ dial }) => dial)).toEqual(close([0, 30, 150, 150]));
  // Seen from its other end a screw turns the same way.
  expect(right!.fromEnd.map(({ turn }) => turn)).toEqual(close([0, -120, -30, 0]));
});

test('half a turn is 180 under either sign', () => {
  const offset = [SHAPES[0]!, { ...SHAPES[1]!, rotation: 180 }];
  for (const rotation of ['right-handed', 'left-handed'] as const) {
    const [tube] = tubesOf(designOf(offset, 70, { workshop: { rotation } }));
    expect([tube!.fromStart[1]!.turn, tube!.fromStart[1]!.dial]).toEqual(close([180, 180]));
    expect(readCsv(machineSchedule([tube!]))[1]!.turn).toBe('180.00000000');
  }
});

test('a straight tube is one row, its mark where it is trimmed', () => {
  const [tube] = tubesOf(designOf([], 300, { tooling: { trimStart: 10, trimEnd: 20 } }));
  expect(tube!.fromStart).toHaveLength(1);
  expect(tube!.fromStart[0]).toMatchObject({ feed: 330, mark: 310, markEnd: 330, set: 0, clamps: true });
  expect(tube).toMatchObject({
    cutLength: 330,
    clampable: { fromStart: true, fromEnd: true },
    thinned: [],
    remarks: [],
  });
});

test('a bend that is set past half a turn, and a stretch beyond the straight behind a bend, are told', () => {
  const wide = [{ length: 100, rotation: 0, angle: 176, radius: 60 }];
  const [tube] = tubesOf(designOf(wide, 100, { tooling: { bender: { testBends: [[93, 90]] } } }));
  expect(tube!.remarks).toEqual([expect.objectContaining({ where: 'tooling/primary/bender/testBends', stops: false })]);
  expect(tube!.remarks[0]!.message).toMatch(/set to 181\.87° so that 176° is left; the tooling makes at most 180°/);
  const near = [SHAPES[0]!, { ...SHAPES[1]!, length: 2 }];
  const [tight] = tubesOf(designOf(near, 100, { tooling: { bender: { stretch: 5, clamp: 1 } } }));
  expect(tight!.fromStart[1]!.feed).toBeCloseTo(2 - 0.05 * QUARTER, 8);
  expect(tight!.remarks.map(({ where }) => where)).toEqual(['tooling/primary/bender/stretch']);
  expect(tight!.remarks[0]!.message).toMatch(
    /2 mm of straight behind it, with a stretch of 5 %: the carriage goes back by 2\.71 mm/,
  );
});

test('wider than the tooling makes stops it', () => {
  const [tube] = tubesOf(designOf(SHAPES, 70, { tooling: { maxBendAngle: 80 } }));
  expect(tube!.remarks).toEqual([expect.objectContaining({ where: 'tooling/primary/maxBendAngle', stops: true })]);
});

describe('published', () => {
  // Read in source (an apprenticeship workbook, inches; it prints 37.68 and 79.305 with 1.57 for π/2).
  test('developed length (bend.jatc) is the length sawn', () => {
    const it = published<Record<'D1' | 'D2' | 'DL' | 'total' | 'exact_DL' | 'exact_total', number>>('bend.jatc');
    const shapes = [{ length: it.D1, rotation: 0, angle: 90, radius: 24 }];
    const tube = { outsideDiameter: 2.375, wall: 0.1 };
    const [made] = tubesOf(designOf(shapes, it.D2, { tube }));
    expect(made!.cutLength).toBeCloseTo(it.exact_total, 4);
    expect(Math.abs(made!.cutLength - it.total)).toBeLessThan(0.02);
    const [bend] = made!.fromStart;
    expect(bend!.mark).toBeCloseTo(it.D1, 10);
    expect(bend!.markEnd - bend!.mark).toBeCloseTo(it.exact_DL, 4);
  });

  // Recomputed by two methods; the second is the first mirrored.
  type Case = { name: string; points: Vec3[]; clr: number; L: number[]; R: number[]; A: number[]; developed: number };
  const cases = (
    JSON.parse(readFileSync(new URL('../../../reference/lra-cases.json', import.meta.url), 'utf8')) as Case[]
  ).filter(({ clr, name }) => clr > 0 && !name.startsWith('E:'));
  test('six cases have a radius and no continuous bend', () => expect(cases).toHaveLength(6));

  test.each(cases)('$name', ({ points, clr, L, R, A, developed }) => {
    const tube = { outsideDiameter: clr / 2, wall: clr / 40 };
    const design = oneRunner({ points, radii: A.map(() => clr) }, { tube });
    const [made] = tubesOf(design);
    const turn = (degrees: number): number => (degrees <= -180 + 1e-6 ? 180 : degrees);
    const { fromStart, fromEnd } = made!;
    expect(fromStart.map(({ feed }) => feed)).toEqual(close(L, 5));
    expect(fromStart.slice(0, -1).map((row) => row.turn)).toEqual(close(R.map(turn), 4));
    expect(fromStart.slice(0, -1).map(({ set }) => set)).toEqual(close(A, 5));
    expect(made!.cutLength).toBeCloseTo(developed, 4);
    expect(fromEnd.map(({ feed }) => feed)).toEqual(close([...L].reverse(), 5));
    expect(fromEnd.slice(1, -1).map((row) => row.turn)).toEqual(close(R.slice(1).map(turn).reverse(), 4));
  });
});
