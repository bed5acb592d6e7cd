/**
 * The shape of a design document, field by field: types, ranges, counts. Every node carries the words that tell what is
 * allowed there. Unknown fields pass. What one field owes another is checked in references.ts and dimensions.ts.
 */
import { z } from 'zod';
import { engineShape } from './engineShape';
import { exhaustShape } from './exhaustShape';
import { list, maybe, object, oneOf, ranged } from './fields';
import {
  MAX_ENTRIES,
  MAX_FASTENERS,
  MAX_FLANGES,
  MAX_LENGTH,
  MAX_MERGES,
  MAX_OUTLINE,
  MAX_POINTS,
  MAX_PORTS,
  MAX_RUNNERS,
  MAX_SENSORS,
  MAX_SERVICE,
  MAX_STOCK,
  MAX_SURROUNDINGS,
  MAX_TEST_BENDS,
  MAX_TEXT,
  MAX_WRAPPED,
} from './limits';
import {
  BEND_ANGLE,
  BENDS,
  BULGE,
  CLOCK,
  COMPONENT,
  CONVERGENCE,
  COORDINATE,
  COUNT,
  CYLINDERS,
  DIAL,
  DISTANCE,
  INLETS,
  LAYERS,
  LENGTH,
  MINUTES,
  PRICE,
  ROCK,
  STRETCH,
  TEMPERATURE,
  TILT,
} from './ranges';
import type { Design } from './types';

const text = (() => {
  const allowed = `text of at most ${MAX_TEXT} characters on one line`;
  return z
    .string(allowed)
    .max(MAX_TEXT, allowed)
    .regex(/^\P{Cc}*$/u, allowed);
})();
const id = z.string('an id in double quotes');
const record = <T extends z.ZodType>(entry: T) => z.record(z.string(), entry, 'an object of named entries');

const length = ranged(LENGTH, 'mm');
const distance = ranged(DISTANCE, 'mm');
const coordinate = ranged(COORDINATE, 'mm');
const point = z.tuple([coordinate, coordinate, coordinate], 'three numbers, mm');
const component = ranged(COMPONENT);
const vector = z.tuple([component, component, component], 'three numbers');

const cylinder = ranged(CYLINDERS);

const opening = z.discriminatedUnion(
  'shape',
  [
    object({ shape: z.literal('round'), diameter: length }),
    object({ shape: z.literal('rounded-rectangle'), width: length, height: length, corner: distance }),
    object({ shape: z.literal('oval'), width: length, height: length }),
  ],
  'an object whose shape is "round", "rounded-rectangle" or "oval"',
);
const port = object({
  id,
  cylinder,
  position: point,
  direction: vector,
  up: vector,
  opening,
  lengthInHead: maybe(distance),
  bundle: maybe(distance),
  transition: maybe(object({ length, wall: maybe(length) })),
});

const fastener = object({ position: point, kind: text, thread: text, length: maybe(length), hole: length });
const outlineVertex = z.tuple(
  [coordinate, coordinate, ranged(BULGE)],
  'x, y in mm and the bulge of the edge that follows',
);
const flange = object({
  id,
  ports: list(id, MAX_PORTS, 'port ids'),
  thickness: length,
  gasket: maybe(distance),
  material: maybe(text),
  fasteners: maybe(list(fastener, MAX_FASTENERS, 'fasteners')),
  seat: maybe(oneOf('flush', 'stepped')),
  stepDepth: maybe(length),
  stepGap: maybe(distance),
  border: maybe(length),
  plates: maybe(oneOf('one', 'separate')),
  outline: maybe(list(outlineVertex, MAX_OUTLINE, 'corners').min(2, `at least two corners, at most ${MAX_OUTLINE}`)),
});

const tube = object({ outsideDiameter: length, wall: length, material: maybe(text) });
const testBend = z.tuple(
  [ranged(BEND_ANGLE, 'degrees'), ranged(BEND_ANGLE, 'degrees')],
  'two angles, degrees: the one set, the one measured',
);
const bender = object({
  clamp: maybe(distance),
  tail: maybe(distance),
  testBends: maybe(list(testBend, MAX_TEST_BENDS, 'test bends')),
  stretch: maybe(ranged(STRETCH, 'percent')),
});
const tooling = object({
  making: maybe(oneOf('bent', 'welded')),
  centerlineRadius: length,
  otherRadii: maybe(list(length, MAX_ENTRIES, 'radii')),
  firstStraight: distance,
  betweenStraight: distance,
  lastStraight: distance,
  maxBendAngle: ranged(BEND_ANGLE, 'degrees'),
  maxBends: ranged(BENDS),
  trimStart: maybe(distance),
  trimEnd: maybe(distance),
  bender: maybe(bender),
});

const placement = object({
  within: z.tuple([point, point], 'two corners of a box, three numbers each, mm'),
  tilt: maybe(ranged(TILT, 'degrees')),
});
const merge = object({
  id,
  inlets: ranged(INLETS),
  pattern: maybe(oneOf('ring', 'line')),
  position: point,
  axis: vector,
  up: vector,
  pitch: maybe(length),
  convergence: maybe(ranged(CONVERGENCE, 'degrees')),
  bundle: maybe(distance),
  outletDiameter: length,
  wall: maybe(length),
  material: maybe(text),
  length,
  outletJoint: maybe(oneOf('slip', 'band-clamp', 'flange', 'flexible', 'weld')),
  mergingLength: maybe(distance),
  outletLength: maybe(distance),
  weldGap: maybe(distance),
  slipGap: maybe(distance),
  placement: maybe(placement),
});

const start = z.union([object({ port: id }), object({ merge: id })], '{ "port": … } or { "merge": … }');
const runner = object({
  id,
  tube: id,
  group: maybe(id),
  from: start,
  to: object({ merge: id, inlet: maybe(ranged(INLETS)) }),
  points: maybe(
    list(point, MAX_POINTS, 'points').min(
      2,
      `at least two points, at most ${MAX_POINTS}; or leave points out where it is not laid out yet`,
    ),
  ),
  radii: maybe(list(length, MAX_POINTS, 'radii')),
  locked: maybe(z.boolean('true or false')),
  wrapped: maybe(list(z.tuple([distance, distance], 'from and to, mm'), MAX_WRAPPED, 'stretches')),
  splits: maybe(list(ranged({ least: 2, most: MAX_POINTS, whole: true }), MAX_POINTS, 'numbers of bends')),
});

const lengthOrEqual = 'a number above 0, mm, or null for any length, but equal';
const group = object({
  length: z.number(lengthOrEqual).gt(0, lengthOrEqual).max(MAX_LENGTH, `at most ${MAX_LENGTH} mm`).nullable(),
  tolerance: distance,
});

const anySurrounding = {
  id,
  clearance: maybe(distance),
  kind: maybe(text),
  fixedTo: maybe(oneOf('engine', 'vehicle')),
};
const surrounding = z.discriminatedUnion(
  'shape',
  [
    object({ ...anySurrounding, shape: z.literal('capsule'), a: point, b: point, radius: length }),
    object({ ...anySurrounding, shape: z.literal('box'), min: point, max: point }),
    object({ ...anySurrounding, shape: z.literal('cylinder'), a: point, b: point, radius: length }),
    object({ ...anySurrounding, shape: z.literal('plane'), position: point, normal: vector }),
    object({
      ...anySurrounding,
      shape: z.literal('mesh'),
      file: text,
      unit: maybe(oneOf('mm', 'cm', 'm', 'in')),
      pose: maybe(object({ position: maybe(point), x: maybe(vector), y: maybe(vector) })),
      crop: maybe(z.tuple([point, point], 'two corners of a box, three numbers each, mm')),
      thin: maybe(length),
    }),
  ],
  'an object whose shape is "capsule", "box", "cylinder", "plane" or "mesh"',
);

const angles = z.tuple([ranged(ROCK, 'degrees'), ranged(ROCK, 'degrees')], 'two angles, degrees, the lesser first');
const motion = object({
  rock: maybe(object({ position: point, axis: vector, angles })),
  heat: maybe(object({ temperature: ranged(TEMPERATURE, '°C'), from: maybe(ranged(TEMPERATURE, '°C')) })),
});
const wrap = object({ thickness: length, layers: ranged(LAYERS), roll: length });
const access = object({
  required: maybe(z.boolean('true or false')),
  tools: maybe(list(text, MAX_ENTRIES, 'names of tools')),
  extensions: maybe(list(length, MAX_ENTRIES, 'lengths')),
});
const servicePoint = object({
  id,
  kind: oneOf('spark-plug', 'oil-filter', 'starter', 'dipstick', 'bolt'),
  position: point,
  direction: vector,
  acrossFlats: maybe(length),
  diameter: maybe(length),
  length: maybe(length),
});
const sensor = object({
  id,
  kind: oneOf('oxygen', 'temperature'),
  on: z.union([object({ runner: id }), object({ merge: id })], '{ "runner": … } or { "merge": … }'),
  at: distance,
  clock: ranged(CLOCK, 'degrees'),
  length: maybe(length),
});

const price = ranged(PRICE);
const minutes = maybe(ranged(MINUTES, 'minutes'));
const stock = {
  id,
  outsideDiameter: length,
  wall: length,
  material: maybe(text),
  count: maybe(ranged(COUNT)),
  buy: maybe(z.boolean('true or false')),
  price: maybe(price),
};
const workshop = object({
  kerf: maybe(distance),
  endTrim: maybe(distance),
  leastOffcut: maybe(distance),
  weldGap: maybe(distance),
  weldShrinkage: maybe(distance),
  weldSetback: maybe(distance),
  longestLeg: maybe(distance),
  torchRoom: maybe(distance),
  tape: maybe(length),
  dial: maybe(ranged(DIAL, 'degrees')),
  rotation: maybe(oneOf('right-handed', 'left-handed')),
  thinning: maybe(oneOf('geometric', 'tema', 'b31.1')),
  currency: maybe(text),
  hourly: maybe(price),
  minutes: maybe(object({ cut: minutes, weld: minutes, bend: minutes, setUp: minutes })),
  weldCost: maybe(price),
  bars: maybe(list(object({ ...stock, length }), MAX_STOCK, 'bars')),
  bends: maybe(
    list(
      object({
        ...stock,
        radius: length,
        angle: ranged(BEND_ANGLE, 'degrees'),
        legs: z.tuple([distance, distance], 'two lengths, mm'),
      }),
      MAX_STOCK,
      'stock bends',
    ),
  ),
  prices: maybe(record(price)),
});

export const designShape = object({
  format: z.literal('evenrun-design'),
  version: z.literal(1),
  title: maybe(text),
  display: maybe(oneOf('mm', 'in')),
  engine: maybe(engineShape),
  ports: list(port, MAX_PORTS, 'ports'),
  flanges: maybe(list(flange, MAX_FLANGES, 'flanges')),
  tubes: record(tube),
  tooling: record(tooling),
  merges: list(merge, MAX_MERGES, 'merges'),
  runners: list(runner, MAX_RUNNERS, 'runners'),
  groups: record(group),
  surroundings: maybe(list(surrounding, MAX_SURROUNDINGS, 'surroundings')),
  clearance: maybe(object({ tubeToTube: distance })),
  motion: maybe(motion),
  wrap: maybe(wrap),
  access: maybe(access),
  service: maybe(list(servicePoint, MAX_SERVICE, 'service points')),
  sensors: maybe(list(sensor, MAX_SENSORS, 'sensors')),
  workshop: maybe(workshop),
  exhaust: maybe(exhaustShape),
});

/** Fails to compile when the shape and the types drift apart. */
export type SameAsTypes = z.output<typeof designShape> extends Design ? true : never;
export const sameAsTypes: SameAsTypes = true;
