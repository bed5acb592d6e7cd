/**
 * The junction at angles, at low Mach numbers, against loss coefficients of wyes (I. E. Idelchik, Handbook of Hydraulic Resistance,
 * ch. 7; formulas from memory) and a sudden enlargement (Borda, Carnot). Losses are of total pressure over ½ρu² of the common pipe.
 */
import { expect, test } from 'vitest';
import { air, ambient, atRest, endOver, type Inside, machOnPlane, passed, planesOf, setInside } from './planeSet';

const density = ambient.pressure / (287.05 * ambient.temperature);
const slow = (area: number, velocity: number): Inside => ({ ...atRest(area), velocity });
const lossy = (angles: readonly number[]) => ({ kind: 'junction', model: 'pressure-loss', angles }) as const;
const cosine = (degrees: number) => Math.cos((degrees * Math.PI) / 180);

/** Between two planes, of ½ρu² at the common one. */
function loss(planes: ReturnType<typeof passed>, from: number, to: number, common: number): number {
  const total = (i: number) => planes.planePressure[i]! + 0.5 * density * planes.planeVelocity[i]! ** 2;
  return (total(from) - total(to)) / (0.5 * density * planes.planeVelocity[common]! ** 2);
}

/** What compressibility leaves at Mach numbers of 0.003: of first order in them, by the change of density. */
const LEFT = 0.001;

test.each([
  [1, 1, 1, 30, 0],
  [1, 0.5, 1, 45, 0],
  [1, 0.5, 1.5, 90, 0],
  [0.8, 0.6, 1, 15, 15],
])('two pipes of %s and %s into one of %s at %s° and %s°', (first, second, common, angle, other) => {
  // Directions lead away: what enters at an angle to the common pipe comes from its far side.
  const angles = [180 - angle, 180 + other, 0];
  const planes = passed(air, [slow(first, 0.8), slow(second, 0.5), slow(common, -1)], lossy(angles));
  const v = [0, 2, 4].map((i) => Math.abs(planes.planeVelocity[i]!));
  const share = [first * v[0]!, second * v[1]!].map((flow) => flow / (common * v[2]!));
  const carried = share[0]! * (v[0]! / v[2]!) * cosine(angle) + share[1]! * (v[1]! / v[2]!) * cosine(other);
  for (const k of [0, 1])
    expect(Math.abs(loss(planes, 2 * k, 4, 4) - (1 + (v[k]! / v[2]!) ** 2 - 2 * carried))).toBeLessThan(LEFT);
});

test.each([
  [1, 1, 60],
  [0.5, 1.2, 90],
  [0.7, 0.7, 20],
])('one pipe into a branch of %s at %3$s° and one of %s straight on', (branch, straight, angle) => {
  const planes = passed(air, [slow(1, 1.2), slow(branch, -0.5), slow(straight, -0.8)], lossy([180, angle, 0]));
  const v = [0, 2, 4].map((i) => Math.abs(planes.planeVelocity[i]!));
  for (const [k, turn] of [
    [1, angle],
    [2, 0],
  ] as const) {
    const ratio = v[k]! / v[0]!;
    expect(Math.abs(loss(planes, 0, 2 * k, 0) - (1 + ratio ** 2 - 2 * ratio * cosine(turn)))).toBeLessThan(LEFT);
  }
});

test('a sudden enlargement loses what Borda and Carnot say', () => {
  const planes = passed(air, [slow(0.4, 1.2), slow(1, -0.5)], lossy([180, 0]));
  expect(Math.abs(loss(planes, 0, 2, 0) - (1 - 0.4) ** 2)).toBeLessThan(LEFT);
});

test('a stream straight on in one bore loses nothing; a bend of 90° loses its whole head and as much again', () => {
  for (const velocity of [10, 200]) {
    const planes = passed(air, [slow(1, velocity), slow(1, -velocity)], lossy([180, 0]));
    expect(planes.planePressure[2]! / ambient.pressure).toBeCloseTo(1, 12);
    expect(planes.planeVelocity[2]! / -velocity).toBeCloseTo(1, 11);
  }
  const bent = passed(air, [slow(1, 1), slow(1, -1)], lossy([180, 90]));
  expect(Math.abs(loss(bent, 0, 2, 0) - 2)).toBeLessThan(LEFT);
});

test('directions in space say the same as angles, whatever their length', () => {
  const insides = [slow(1, 80), slow(0.5, 50), slow(1, -90)];
  const flat = passed(air, insides, lossy([150, 200, 0]));
  const turn = (degrees: number, length: number) =>
    [0, length * cosine(degrees), length * Math.sin((degrees * Math.PI) / 180)] as const;
  const directions = [turn(150, 3), turn(200, 0.1), turn(0, 7)];
  const space = passed(air, insides, { kind: 'junction', model: 'pressure-loss', directions });
  for (const i of [0, 2, 4]) expect(space.momentumFlux[i]! / flat.momentumFlux[i]!).toBeCloseTo(1, 12);
});

test('gas at rest stays at rest exactly', () => {
  const insides = [300, 900, 555].map((temperature) => ({ ...atRest(1e-3), temperature }));
  const planes = passed(air, insides, lossy([0, 100, 200]));
  for (const i of [0, 2, 4]) {
    expect(planes.massFlux[i]).toBe(0);
    expect(planes.momentumFlux[i]).toBe(ambient.pressure);
  }
});

test('nothing jumps where a stream turns round', () => {
  const turning = (velocity: number): Inside => ({ ...atRest(2e-3), temperature: 350, velocity });
  const planes = planesOf(air, [slow(1e-3, 50), turning(0), slow(1.5e-3, -20)]);
  const end = endOver(planes, lossy([180, 60, 0]));
  const steps = 4000;
  let turned = 0;
  let before: number[] = [];
  for (let n = 0; n <= steps; n++) {
    setInside(planes, 2, turning(40 * ((2 * n) / steps - 1)));
    end.pass(0, 1e-6);
    const now = [0, 2, 4].flatMap((i) => [planes.massFlux[i]!, planes.momentumFlux[i]! / 343]);
    now.forEach((value, k) => {
      if (n > 0) expect(Math.abs(value - before[k]!)).toBeLessThan(0.05);
    });
    if (n > 0 && Math.sign(now[2]!) !== Math.sign(before[2]!)) turned++;
    before = now;
  }
  expect(turned).toBe(1);
});

test('no faster than sound into a pipe', () => {
  const insides = [
    { ...atRest(1e-3), pressure: 3e6, temperature: 900 },
    { ...atRest(1e-3), pressure: 2e4 },
    { ...atRest(4e-4), pressure: 1e3, velocity: -200 },
  ];
  const planes = passed(air, insides, lossy([180, 60, 0]));
  for (const i of [2, 4]) expect(machOnPlane(planes, i)).toBeLessThan(1 + 1e-12);
  expect(machOnPlane(planes, 4)).toBeCloseTo(1, 12);
});
