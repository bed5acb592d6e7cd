/**
 * The shape of a rig document, field by field: types, ranges, counts. Every node carries the words that tell what is allowed there.
 * A field that no one knows is refused, since a mistyped one would be passed over in silence; free remarks are let through. What one
 * field owes another is checked in pipeProblems.ts, endProblems.ts and stateProblems.ts.
 */
import { z } from 'zod';
import { oneOf, ranged } from '../../../shared/design/fields';
import { oneOf as oneOfThese } from '../../../shared/design/refusal';
import * as limits from './limits';

/** For people, on any object; nothing reads them. */
const remark = z.exactOptional(z.unknown());
const remarks = {
  title: remark,
  about: remark,
  note: remark,
  source: remark,
  name: remark,
  description: remark,
  comment: remark,
};

const list = <T extends z.ZodType>(entry: T, least: number, most: number, what: string) => {
  const allowed = `a list of ${least} to ${most} ${what}`;
  return z.array(entry, allowed).min(least, allowed).max(most, allowed);
};
const object = <T extends z.ZodRawShape>(shape: T) =>
  z.strictObject(
    { ...remarks, ...shape },
    // Of a field that is not known: the names that are.
    {
      error: ({ code }) => `${code === 'unrecognized_keys' ? '' : 'an object with '}${Object.keys(shape).join(', ')}`,
    },
  );
const maybe = z.exactOptional;

const pressure = ranged(limits.PRESSURE, 'Pa');
const temperature = ranged(limits.TEMPERATURE, 'K');
const position = ranged(limits.POSITION, 'm');
const fractions = z.record(
  z.string(),
  ranged({ least: 0, most: 1 }),
  'an object of mass fractions by component, such as { "burnt": 1 }',
);

export const perfectGasShape = object({
  gamma: ranged(limits.GAMMA),
  gasConstant: ranged(limits.GAS_CONSTANT, 'J/(kg K)'),
});
export const mixtureShape = object({
  components: list(z.string('the name of a component'), 1, limits.MAX_COMPONENTS, 'names of components'),
});

const pipe = object({
  id: z.string('a name in double quotes'),
  length: ranged(limits.PIPE_LENGTH, 'm'),
  cells: ranged(
    { least: limits.LEAST_CELLS, most: limits.MAX_CELLS, whole: true },
    '(a pipe needs some cells to carry a wave: divide a shorter one finer, or leave it out)',
  ),
  diameter: list(
    z.tuple([position, ranged(limits.DIAMETER, 'm')], 'a pair [x, diameter], m'),
    2,
    limits.MAX_LINES,
    'pairs [x, diameter], from x = 0 to the length',
  ),
  friction: maybe(
    z.union(
      [ranged(limits.FRICTION), object({ roughness: ranged(limits.ROUGHNESS, 'm') })],
      'a Fanning factor from 0 to 1, or { "roughness": height in m }',
    ),
  ),
  wallTemperature: maybe(z.nullable(ranged(limits.TEMPERATURE, 'K, or null for a wall without heat'))),
  initial: list(
    object({
      from: position,
      to: position,
      pressure,
      temperature,
      velocity: maybe(ranged(limits.VELOCITY, 'm/s')),
      fractions: maybe(fractions),
    }),
    1,
    limits.MAX_LINES,
    'stretches with a state',
  ),
});

const place = z.tuple(
  [z.string('the id of a pipe'), oneOf('start', 'finish')],
  'a pair ["pipe", "start"] or ["pipe", "finish"]',
);
const discharge = ranged(limits.SHARE);
const area = z.union(
  [
    ranged(limits.AREA, 'm²'),
    list(
      z.tuple([ranged(limits.INSTANT, 's'), ranged(limits.AREA, 'm²')], 'a pair [time, area], s and m²'),
      1,
      limits.MAX_LINES,
      'pairs [time, area]',
    ),
  ],
  'pairs [[time, area], …], or one area that holds all the time, m²',
);
const direction = z.tuple(
  [ranged(limits.COMPONENT), ranged(limits.COMPONENT), ranged(limits.COMPONENT)],
  'three numbers, of any length but 0',
);

const ends = {
  closed: object({ kind: z.literal('closed'), at: place }),
  through: object({ kind: z.literal('through'), at: place }),
  open: object({
    kind: z.literal('open'),
    at: place,
    endCorrection: maybe(
      z.union(
        [ranged(limits.END_CORRECTION, 'radii'), oneOf('unflanged', 'flanged')],
        '"unflanged", "flanged", or a number of radii from 0 to 5',
      ),
    ),
    area: maybe(area),
    dischargeCoefficient: maybe(discharge),
  }),
  junction: object({
    kind: z.literal('junction'),
    at: list(place, 2, limits.MAX_PLACES, 'places ["pipe", "start" or "finish"] (one alone is "closed" or "open")'),
    model: maybe(oneOf('equal-pressure', 'pressure-loss')),
    angles: maybe(list(ranged(limits.ANGLE, 'degrees'), 0, limits.MAX_PLACES, 'angles, degrees')),
    directions: maybe(list(direction, 0, limits.MAX_PLACES, 'directions [x, y, z]')),
  }),
  restriction: object({
    kind: z.literal('restriction'),
    at: z.tuple([place, place], 'two places [["pipe", "finish"], ["pipe", "start"]]'),
    area,
    dischargeCoefficient: maybe(discharge),
  }),
  vessel: object({
    kind: z.literal('vessel'),
    at: place,
    volume: ranged(limits.VOLUME, 'm³'),
    pressure,
    temperature,
    fractions: maybe(fractions),
    area,
    dischargeCoefficient: maybe(discharge),
  }),
};
export const END_KINDS = Object.keys(ends);

/** Without a kind that is known nothing else of an end can be judged. */
const end = z.discriminatedUnion(
  'kind',
  [ends.closed, ends.through, ends.open, ends.junction, ends.restriction, ends.vessel],
  { error: ({ code }) => `${code === 'invalid_union' ? '' : 'an object whose "kind" is '}${oneOfThese(END_KINDS)}` },
);

export const rigShape = object({
  format: z.unknown(),
  version: z.unknown(),
  /** By itself: which of the two shapes holds is told by what is in it. */
  gas: maybe(z.unknown()),
  ambient: object({ pressure, temperature, fractions: maybe(fractions) }),
  pipes: list(pipe, 1, limits.MAX_PIPES, 'pipes'),
  ends: list(end, 1, limits.MAX_ENDS, 'ends'),
  duration: ranged(limits.DURATION, 's'),
  courant: maybe(ranged(limits.SHARE)),
  probes: maybe(list(object({ pipe: z.string('the id of a pipe'), x: position }), 0, limits.MAX_PROBES, 'probes')),
  sample: maybe(ranged(limits.SAMPLE, 's')),
  profile: maybe(z.boolean('true or false')),
});

/** Of the right shape, with what may be left out still left out. */
export type ShapedRig = Omit<z.infer<typeof rigShape>, 'gas'> & {
  readonly gas: z.infer<typeof perfectGasShape> | z.infer<typeof mixtureShape>;
};
export type ShapedPipe = ShapedRig['pipes'][number];
export type ShapedEnd = ShapedRig['ends'][number];
