/**
 * Bend rows against cases worked by two methods (vectors, and marching a frame; they agree to 1e-12), and against the
 * figures of a public forum thread's four points. Sources stand in the JSON files beside this one.
 */
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { bendTable, centerline, distance, fromBendTable } from '../../geometry';
import type { Vec3 } from '../../shared/vec3';
import { published } from './published';

type Case = {
  name: string;
  points: Vec3[];
  clr: number;
  leg: number[];
  setback: number[];
  L: number[];
  R: number[];
  A: number[];
  developed: number;
  gain: number;
};
const cases = JSON.parse(readFileSync(new URL('lra-cases.json', import.meta.url), 'utf8')) as Case[];
const up: Vec3 = [0.1, 0.2, 0.97];
// The kernel knows no bend of radius 0: the sharp-cornered case is taken to a thousandth of a micron.
const lineOf = ({ points, clr }: Case) =>
  centerline(
    points,
    points.slice(1, -1).map(() => Math.max(clr, 1e-6)),
  );

/** −180 and 180 are one plane. */
const turn = (degrees: number): number => (degrees <= -180 + 1e-9 ? 180 : degrees);

test('all eight cases are here', () => expect(cases).toHaveLength(8));

describe.each(cases)('$name', (given) => {
  const line = lineOf(given);
  const table = bendTable(line, up);

  test('legs, setbacks, straights, angles, developed length and gain', () => {
    const close = (found: readonly number[], wanted: readonly number[]): void => {
      expect(found).toHaveLength(wanted.length);
      for (const [i, x] of found.entries()) expect(x).toBeCloseTo(wanted[i]!, 5);
    };
    const legs = given.points.slice(1).map((p, i) => distance(p, given.points[i]!));
    close(legs, given.leg);
    close(line.setbacks, given.setback);
    close(line.straights, given.L);
    close(
      line.turns.map((t) => (t * 180) / Math.PI),
      given.A,
    );
    expect(line.length).toBeCloseTo(given.developed, 5);
    expect(legs.reduce((a, b) => a + b, 0) - line.length).toBeCloseTo(given.gain, 5);
  });

  test('rows: length, rotation, angle, then the straight that remains', () => {
    const merged = given.name.startsWith('E:');
    if (merged) {
      // No straight between two bends of one plane and turn: by the contract they are one bend of 180°.
      expect(table.rows.map(({ length, angle }) => [length, angle])).toEqual([
        [expect.closeTo(given.L[0]!, 9), expect.closeTo(180, 9)],
        [expect.closeTo(given.L[2]!, 9), 0],
      ]);
      return;
    }
    const rows = table.rows.slice(0, -1);
    expect(rows).toHaveLength(given.A.length);
    for (const [i, row] of rows.entries()) {
      expect(row.length).toBeCloseTo(given.L[i]!, 5);
      expect(row.rotation).toBeCloseTo(turn(given.R[i]!), 5);
      expect(row.angle).toBeCloseTo(given.A[i]!, 5);
    }
    expect(table.rows.at(-1)!).toEqual({
      length: expect.closeTo(given.L.at(-1)!, 5),
      rotation: 0,
      angle: 0,
      radius: 0,
    });
  });

  test('rebuilt from its rows it is the same tube', () => {
    const start = { position: given.points[0]!, direction: line.directions[0]!, up };
    const rebuilt = fromBendTable(start, table);
    expect(centerline(rebuilt.points, rebuilt.radii).length).toBeCloseTo(line.length, 9);
    expect(distance(rebuilt.points.at(-1)!, given.points.at(-1)!)).toBeLessThan(1e-9);
  });
});

test('the forum’s four points: legs, angles, rotation, and the tilt of their plane, which is not the rotation', () => {
  const line = lineOf(cases[1]!);
  const legs = line.points.slice(1).map((p, i) => distance(p, line.points[i]!));
  for (const [i, x] of published<number[]>('lra.forum.legs').entries()) expect(legs[i]).toBeCloseTo(x, 6);
  for (const [i, x] of published<number[]>('lra.forum.angles').entries())
    expect((line.turns[i]! * 180) / Math.PI).toBeCloseTo(x, 6);
  expect(bendTable(line, up).rows[1]!.rotation).toBeCloseTo(published<number>('lra.forum.rotation'), 6);
  const [, dy, dz] = line.directions[1]!;
  expect((Math.atan2(dz, -dy) * 180) / Math.PI).toBeCloseTo(published<number>('lra.forum.tilt'), 6);
});
