/**
 * The kinds of problem made here, a function each from a variant (from 0) and random numbers. All invented, with dimensions
 * as they are in practice; mm and degrees.
 */
import type { Design, Merge, Surrounding } from '../../../shared/design/types';
import type { Vec3 } from '../../../shared/vec3';
import type { Random } from '../../random';
import { type Asked, portRow, primaries, problem, runner, tooling, tube } from './parts';

export type Kind = (next: Random, variant: number) => Design;

const box = (id: string, min: Vec3, max: Vec3): Surrounding => ({ id, shape: 'box', min, max, clearance: 6 });
const repeat = (merge: string, n: number): string[] => Array.from({ length: n }, () => merge);

const collector = (
  id: string,
  inlets: number,
  od: number,
  more: Partial<Merge> & Pick<Merge, 'position' | 'axis'>,
): Merge => ({
  id,
  inlets,
  pattern: inlets === 2 ? 'line' : 'ring',
  up: [0, 0, 1],
  pitch: od,
  convergence: 6,
  bundle: Math.round(1.5 * od),
  outletDiameter: Math.round(od * (inlets > 3 ? 1.75 : 1.45)),
  length: inlets > 3 ? 140 : 110,
  ...more,
});

/** Two banks leaning apart, two collectors behind; with a cross-over each bank's last runner goes to the other side. */
function twoBanks(next: Random, variant: number, count: number, crosses: boolean): Design {
  const od = [42.4, 44.5, 38, 48.3][variant]!;
  const pitch = [104, 112, 96, 110][variant]!;
  const lean: Vec3 = [0, 0.87, -0.5];
  const [y, back] = [170, 2 * pitch + next.whole(170, 210)];
  const ports = [
    ...portRow(4, pitch, { position: [-12, y, 0], direction: lean }),
    ...portRow(4, pitch, { first: 5, position: [12, -y, 0], direction: [0, -0.87, -0.5] }),
  ];
  const side = (id: string, s: number): Merge =>
    collector(id, 4, od, { position: [back, s * next.whole(150, 180), -next.whole(290, 330)], axis: [1, 0, -0.2] });
  const to = [...repeat('m1', 4), ...repeat('m2', 4)];
  if (crosses) [to[3], to[7]] = ['m2', 'm1'];
  // Behind the block, one above the other.
  const over = (s: number, z: number) => [
    { position: [back - 110, s * 110, z] as Vec3, direction: [0.3, -s * 0.95, 0] as Vec3 },
  ];
  return problem(next, {
    title: `Eight in two banks${crosses ? ', one runner of each crossing over' : ''} (${variant + 1})`,
    ports,
    merges: [side('m1', 1), side('m2', -1)],
    runners: primaries(ports, to),
    tubes: { primary: tube(od) },
    tooling: { primary: tooling(Math.round(1.5 * od)) },
    by: crosses ? { r4: over(1, -90), r8: over(-1, -190) } : {},
    fixed: [box('block', [-2 * pitch - 30, -110, -240], [1.4 * pitch, 110, 120])],
    count,
    stretch: variant === 2 ? 1.1 : null,
  });
}

export const eightInTwoBanks: Kind = (next, variant) => twoBanks(next, variant, 6 + 2 * variant, variant % 2 === 1);
export const eightInACrowd: Kind = (next, variant) =>
  twoBanks(next, variant, [30, 32, 36, 40][variant]!, variant === 3);

/** Six into two threes that may move, whose outlets join further back: in a crowded bay. */
export const sixTwoOne: Kind = (next, variant) => {
  const od = [38, 42.4, 40, 38][variant]!;
  const second = od + 9;
  const pitch = [92, 100, 96, 88][variant]!;
  const ports = portRow(6, pitch);
  const three = (id: string, x: number): Merge => {
    const position: Vec3 = [x, next.whole(190, 220), -next.whole(270, 300)];
    const within = [-40, 40].map((d): Vec3 => [position[0] + d, position[1] + d, position[2] + d]) as [Vec3, Vec3];
    return collector(id, 3, od, {
      position,
      axis: [0.45, 0, -1],
      outletDiameter: second,
      placement: { within, tilt: 12 },
    });
  };
  const merges = [
    three('m1', -1.1 * pitch),
    three('m2', 1.3 * pitch),
    collector('m3', 2, second, { position: [3.9 * pitch + 60, 150, -next.whole(600, 640)], axis: [1, 0, -0.1] }),
  ];
  return problem(next, {
    title: `Six, 6-2-1 in a crowded bay (${variant + 1})`,
    ports,
    merges,
    runners: [
      ...primaries(ports, [...repeat('m1', 3), ...repeat('m2', 3)]),
      runner('s1', { merge: 'm1' }, 'm3', true),
      runner('s2', { merge: 'm2' }, 'm3', true),
    ],
    tubes: { primary: tube(od), secondary: tube(second) },
    tooling: { primary: tooling(Math.round(1.5 * od)), secondary: tooling(Math.round(1.5 * second)) },
    fixed: [box('head', [-3.4 * pitch, -220, -50], [3.4 * pitch, -34, 130])],
    count: [12, 16, 20, 25][variant]!,
  });
};

/** Bent on a machine that grips one to two diameters between bends. */
export const bent: Kind = (next, variant) => {
  const od = [42.4, 38, 44.5, 40][variant]!;
  const grip = [1, 1.5, 2, 2][variant]! * od;
  const bending = (d: number) =>
    tooling(Math.round(1.6 * d), {
      making: 'bent',
      betweenStraight: grip,
      firstStraight: 30,
      lastStraight: 30,
      maxBends: 3,
    });
  const count = variant === 0 ? 3 : 4;
  const pitch = next.whole(88, 104);
  const ports = portRow(count, pitch);
  const z = -next.whole(380, 430);
  const shared = {
    ports,
    fixed: [box('head', [-2.6 * pitch, -220, -50], [2.6 * pitch, -34, 130])],
    count: 7 + variant,
  };
  if (variant < 3) {
    const merges = [collector('m1', count, od, { position: [pitch, next.whole(190, 230), z], axis: [0.5, 0, -1] })];
    return problem(next, {
      ...shared,
      title: `${count}-1, bent with a long grip (${variant + 1})`,
      merges,
      runners: primaries(ports, repeat('m1', count)),
      tubes: { primary: tube(od) },
      tooling: { primary: bending(od) },
    });
  }
  const second = 50.8;
  const pair = (id: string, x: number): Merge =>
    collector(id, 2, od, { position: [x, next.whole(190, 220), -300], axis: [0.2, 0, -1], outletDiameter: second });
  return problem(next, {
    ...shared,
    title: `Four, 4-2-1, bent with a long grip (${variant + 1})`,
    merges: [
      pair('m1', -0.6 * pitch),
      pair('m2', 0.9 * pitch),
      collector('m3', 2, second, { position: [4 * pitch, 150, -720], axis: [1, 0, -0.2] }),
    ],
    runners: [
      ...primaries(ports, ['m1', 'm2', 'm2', 'm1']),
      runner('s1', { merge: 'm1' }, 'm3', true),
      runner('s2', { merge: 'm2' }, 'm3', true),
    ],
    tubes: { primary: tube(od), secondary: tube(second) },
    tooling: { primary: bending(od), secondary: bending(second) },
  });
};

/** Ports one way, the collector back the other, below them: a runner comes back in one bend past 170°. */
function opposed(
  next: Random,
  variant: number,
  od: number,
  drop: number,
  asked: Pick<Asked, 'title' | 'tooling'>,
): Design {
  const count = variant % 2 === 0 ? 3 : 4;
  const pitch = next.whole(84, 92);
  const slope = [0, 0, 0.25, 0.35][variant]!;
  const ports = portRow(count, pitch, { direction: [0, 1, 0] });
  const merge = collector('m1', count, od, {
    position: [next.whole(-20, 20), 70 + 100 * slope, -drop - 50 * slope],
    axis: [0, -1, slope],
    pitch: od + (variant === 2 ? 10 : 2),
    convergence: 0,
    pattern: variant === 2 ? 'line' : 'ring',
  });
  return problem(next, {
    ...asked,
    ports,
    merges: [merge],
    runners: primaries(ports, repeat('m1', count)),
    tubes: { primary: tube(od) },
    fixed: [box('head', [-2.6 * pitch, -260, -40], [2.6 * pitch, -34, 130])],
    count: 5 + variant,
  });
}

export const pastHalfTurn: Kind = (next, variant) => {
  const od = [38, 40, 35, 33.7][variant]!;
  const radius = Math.round(1.75 * od);
  const maxBendAngle = [200, 220, 240, 270][variant]!;
  return opposed(next, variant, od, 2 * radius + next.whole(30, 60), {
    title: `Opposed ends, one bend up to ${maxBendAngle}° (${variant + 1})`,
    tooling: { primary: tooling(radius, { maxBendAngle, betweenStraight: 30, maxBends: 3 }) },
  });
};

/**
 * First two: a wall before the ports, nearer than the standard die can turn, so that a smaller one is needed. Last two:
 * opposed ends further apart than one bend of the standard die, nearer than two with the grip between: a larger one.
 */
export const dies: Kind = (next, variant) => {
  const od = [38, 42.4, 35, 38][variant]!;
  const radius = Math.round((variant < 2 ? 2 : 1.5) * od);
  if (variant >= 2) {
    const larger = [2, 2.25].map((d) => Math.round(d * od));
    return opposed(next, variant, od, 2 * larger[1]! + 10, {
      title: `Choice of dies, a larger one for the way back (${variant + 1})`,
      tooling: {
        primary: tooling(radius, {
          making: 'bent',
          otherRadii: larger,
          maxBendAngle: 230,
          betweenStraight: Math.round(1.5 * od),
          maxBends: 3,
        }),
      },
    });
  }
  const smaller = Math.round(1.2 * od);
  const pitch = next.whole(92, 104);
  const ports = portRow(4, pitch, { direction: [0, 1, 0] });
  // The outside of a bend straight off the port comes no nearer to it than this with the smaller die; the standard one reaches in.
  const wall = 20 + od / 2 + 0.2 * smaller + 0.8 * radius + 6;
  const down = (x: number) => [{ position: [x, 15 + smaller, -1.4 * smaller] as Vec3, direction: [0, 0, -1] as Vec3 }];
  return problem(next, {
    title: `Choice of dies, a smaller one behind a wall (${variant + 1})`,
    ports,
    merges: [collector('m1', 4, od, { position: [0, 150, -next.whole(480, 520)], axis: [0, 0.1, -1] })],
    runners: primaries(ports, repeat('m1', 4)),
    tubes: { primary: tube(od) },
    tooling: { primary: tooling(radius, { otherRadii: [smaller], maxBends: 5 }) },
    by: Object.fromEntries(ports.map((p, i) => [`r${i + 1}`, down(p.position[0])])),
    fixed: [
      box('head', [-2.6 * pitch, -220, -50], [2.6 * pitch, -34, 130]),
      box('wall', [-3 * pitch, Math.round(wall), -80], [3 * pitch, Math.round(wall) + 60, 200]),
    ],
    count: 5 + variant,
    room: 30,
  });
};
