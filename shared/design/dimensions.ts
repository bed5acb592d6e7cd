/**
 * Numbers that are fine alone and impossible together: vectors without direction, walls thicker than their tube, radii
 * that the tube cannot take, points on top of each other. mm. Expects a document of the right shape.
 */
import type { Vec3 } from '../vec3';
import { engineProblems } from './engineRules';
import { pathOf } from './ids';
import { LEAST_LEG, LEAST_SINE, LEAST_VECTOR } from './limits';
import { describe, type Refusal } from './refusal';
import type { Design, Opening, Surrounding } from './types';

/** What `motion/heat/from` is by default, °C. */
export const COLD = 20;

type At = (...rest: (string | number)[]) => string;

export function dimensionProblems(design: Design): Refusal[] {
  const at =
    (...head: (string | number)[]): At =>
    (...rest) =>
      pathOf(design, [...head, ...rest]);
  return [
    ...engineProblems(design.engine),
    ...design.ports.flatMap((port, i) => {
      const here = at('ports', i);
      return [
        ...axesProblems(here, ['direction', port.direction], ['up', port.up]),
        ...openingProblems(here, port.opening),
      ];
    }),
    ...Object.entries(design.tubes).flatMap(([name, tube]) =>
      wallProblems(at('tubes', name), tube.wall, tube.outsideDiameter, 'outside diameter'),
    ),
    ...Object.keys(design.tooling).flatMap((name) => toolingProblems(design, name, at('tooling', name))),
    ...design.merges.flatMap((merge, i) => {
      const here = at('merges', i);
      return [
        ...axesProblems(here, ['axis', merge.axis], ['up', merge.up]),
        ...wallProblems(here, merge.wall ?? 0, merge.outletDiameter, 'outlet diameter'),
      ];
    }),
    ...design.runners.flatMap((_, i) => runnerProblems(design, i, at('runners', i))),
    ...(design.surroundings ?? []).flatMap((thing, i) => surroundingProblems(at('surroundings', i), thing)),
    ...motionProblems(design),
    ...workshopProblems(design),
    ...(design.service ?? []).flatMap((point, i) => zeroProblems(at('service', i), 'direction', point.direction)),
  ];
}

function motionProblems({ motion }: Design): Refusal[] {
  const at: At = (...rest) => ['motion', ...rest].join('/');
  const { rock, heat } = motion ?? {};
  const problems = rock ? zeroProblems((name) => at('rock', name!), 'axis', rock.axis) : [];
  if (rock && rock.angles[0] > rock.angles[1])
    problems.push({ path: at('rock', 'angles'), found: describe(rock.angles), allowed: 'the lesser angle first' });
  if (heat && heat.temperature < (heat.from ?? COLD))
    problems.push({
      path: at('heat', 'temperature'),
      found: String(heat.temperature),
      allowed: `at least ${heat.from ?? COLD} °C, what it starts from`,
    });
  return problems;
}

/** Two vectors, each with a direction, the second not along the first. */
function axesProblems(at: At, [name, axis]: [string, Vec3], [upName, up]: [string, Vec3]): Refusal[] {
  const zero = [...zeroProblems(at, name, axis), ...zeroProblems(at, upName, up)];
  if (zero.length > 0 || sineBetween(axis, up) >= LEAST_SINE) return zero;
  return [{ path: at(upName), found: `${describe(up)}, along ${name}`, allowed: `a vector that is not along ${name}` }];
}

const length = (v: Vec3): number => Math.hypot(v[0], v[1], v[2]);

function zeroProblems(at: At, name: string, v: Vec3): Refusal[] {
  return length(v) < LEAST_VECTOR
    ? [{ path: at(name), found: describe(v), allowed: `a vector at least ${LEAST_VECTOR} long` }]
    : [];
}

function sineBetween(a: Vec3, b: Vec3): number {
  const [ax, ay, az] = a.map((x) => x / length(a)) as [number, number, number];
  const [bx, by, bz] = b.map((x) => x / length(b)) as [number, number, number];
  return Math.hypot(ay * bz - az * by, az * bx - ax * bz, ax * by - ay * bx);
}

function openingProblems(at: At, opening: Opening): Refusal[] {
  if (opening.shape !== 'rounded-rectangle') return [];
  const most = Math.min(opening.width, opening.height) / 2;
  if (opening.corner <= most) return [];
  return [
    {
      path: at('opening', 'corner'),
      found: String(opening.corner),
      allowed: `at most half the shorter side, ${most} mm`,
    },
  ];
}

function wallProblems(at: At, wall: number, diameter: number, of: string): Refusal[] {
  if (wall < diameter / 2) return [];
  return [{ path: at('wall'), found: String(wall), allowed: `less than half the ${of}, ${diameter / 2} mm` }];
}

function radiusProblems(
  at: At,
  field: readonly (string | number)[],
  radius: number,
  outsideDiameter: number,
): Refusal[] {
  if (radius >= outsideDiameter / 2) return [];
  return [
    {
      path: at(...field),
      found: String(radius),
      allowed: `at least half the outside diameter, ${outsideDiameter / 2} mm`,
    },
  ];
}

function toolingProblems(design: Design, name: string, at: At): Refusal[] {
  if (!Object.hasOwn(design.tubes, name)) return [];
  const { outsideDiameter } = design.tubes[name]!;
  const { centerlineRadius, otherRadii = [], bender } = design.tooling[name]!;
  return [
    ...(bender?.testBends ?? []).flatMap(([set, measured], i) =>
      measured <= set
        ? []
        : [
            {
              path: at('bender', 'testBends', i),
              found: `set ${set}, measured ${measured}`,
              allowed: 'at most what was set: tube springs back',
            },
          ],
    ),
    ...radiusProblems(at, ['centerlineRadius'], centerlineRadius, outsideDiameter),
    ...otherRadii.flatMap((radius, i) => radiusProblems(at, ['otherRadii', i], radius, outsideDiameter)),
  ];
}

function runnerProblems(design: Design, i: number, at: At): Refusal[] {
  const { points, radii, tube } = design.runners[i]!;
  const problems: Refusal[] = [];
  points?.forEach((p, k) => {
    const before = points[k - 1];
    if (before && Math.hypot(p[0] - before[0], p[1] - before[1], p[2] - before[2]) < LEAST_LEG) {
      problems.push({
        path: at('points', k),
        found: `the place of point ${k - 1}`,
        allowed: `a point at least ${LEAST_LEG} mm away`,
      });
    }
  });
  const interior = points ? points.length - 2 : 0;
  if (radii && radii.length !== interior) {
    const allowed = points ? `${interior}, one for each point between the ends` : 'none before there are points';
    problems.push({ path: at('radii'), found: `${radii.length} radii`, allowed });
  }
  if (radii && Object.hasOwn(design.tubes, tube)) {
    const { outsideDiameter } = design.tubes[tube]!;
    problems.push(...radii.flatMap((radius, k) => radiusProblems(at, ['radii', k], radius, outsideDiameter)));
  }
  return problems;
}

function surroundingProblems(at: At, thing: Surrounding): Refusal[] {
  if (thing.shape === 'box') {
    if (thing.min.every((least, k) => least <= thing.max[k]!)) return [];
    const found = `${describe(thing.min)}, beyond max ${describe(thing.max)}`;
    return [{ path: at('min'), found, allowed: 'the corner with the smaller x, y and z' }];
  }
  if (thing.shape === 'capsule') return [];
  if (thing.shape === 'cylinder') return endsProblems(at, thing.a, thing.b);
  if (thing.shape === 'plane') return zeroProblems(at, 'normal', thing.normal);
  const { x = [1, 0, 0], y = [0, 1, 0] } = thing.pose ?? {};
  return [...fileProblems(at, thing.file), ...axesProblems((name) => at('pose', name!), ['x', x], ['y', y])];
}

/** Flat ends need an axis to be square to. */
function endsProblems(at: At, a: Vec3, b: Vec3): Refusal[] {
  const apart = length([b[0] - a[0], b[1] - a[1], b[2] - a[2]]);
  return apart >= LEAST_LEG ? [] : [{ path: at('b'), found: `${describe(b)}, where a is`, allowed: 'another end' }];
}

function workshopProblems(design: Design): Refusal[] {
  const { bars = [], bends = [], kerf = 0 } = design.workshop ?? {};
  const at = (list: string, i: number, field: string): string => pathOf(design, ['workshop', list, i, field]);
  const walls = { bars, bends };
  const problems = Object.entries(walls).flatMap(([list, entries]) =>
    entries.flatMap(({ wall, outsideDiameter }, i) =>
      wallProblems((name) => at(list, i, String(name)), wall, outsideDiameter, 'outside diameter'),
    ),
  );
  bends.forEach(({ radius, outsideDiameter }, i) => {
    problems.push(...radiusProblems((name) => at('bends', i, String(name)), ['radius'], radius, outsideDiameter));
  });
  bars.forEach(({ length }, i) => {
    if (kerf < length) return;
    const allowed = `more than the kerf, ${kerf} mm; or a smaller workshop/kerf`;
    problems.push({ path: at('bars', i, 'length'), found: String(length), allowed });
  });
  return problems;
}

/** A hostile design must not reach outside its own folder, on any system. */
function fileProblems(at: At, file: string): Refusal[] {
  const good = file.length <= 200 && /^[^/\\:*?"<>|]+$/.test(file) && !file.startsWith('.');
  return good
    ? []
    : [{ path: at('file'), found: describe(file), allowed: 'the name of a file beside the design, without folders' }];
}
