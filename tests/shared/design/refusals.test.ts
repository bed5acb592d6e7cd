/**
 * One line a refusal: a good document, one thing spoilt, and where, what was found and what is allowed.
 * Long because it is a table; it is to be read beside limits.ts and the contract.
 */
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { DesignError, parseDesign, validateDesign } from '../../../shared/design/parse';

const good = readFileSync(new URL('../../documents/v1/every-field.evenrun.json', import.meta.url), 'utf8');

// biome-ignore lint/suspicious/noExplicitAny: spoiling a document is the point
type Spoil = (design: any) => void;

function refusal(act: () => unknown): DesignError {
  try {
    act();
  } catch (error) {
    expect(error).toBeInstanceOf(DesignError);
    return error as DesignError;
  }
  throw new Error('was accepted');
}

function spoilt(spoil: Spoil): DesignError {
  const design: unknown = JSON.parse(good);
  spoil(design);
  return refusal(() => validateDesign(design));
}

const capitals = (text: string): string => text.toUpperCase();

const spoilings: readonly (readonly [name: string, spoil: Spoil, path: string, found: RegExp, allowed: RegExp])[] = [
  ['no format', (d) => delete d.format, 'format', /^nothing$/, /^"evenrun-design"$/],
  ['another format', (d) => (d.format = 'drawing'), 'format', /^"drawing"$/, /evenrun-design/],
  ['a newer version', (d) => (d.version = 2), 'version', /^2$/, /^1; .*newer/],
  ['a version that never was', (d) => (d.version = 0.5), 'version', /^0\.5$/, /^1$/],
  ['a version as text', (d) => (d.version = '1'), 'version', /^"1"$/, /^1$/],

  ['ports missing', (d) => delete d.ports, 'ports', /^nothing$/, /a list/],
  ['runners no list', (d) => (d.runners = {}), 'runners', /an object/, /a list/],
  ['tubes a list', (d) => (d.tubes = []), 'tubes', /\[\]/, /an object/],
  ['an unknown display', (d) => (d.display = 'furlong'), 'display', /"furlong"/, /"mm", "in"/],
  ['an unknown tool', (d) => (d.access.tools[1] = 'spanner'), 'access/tools/1', /"spanner"/, /"ring-spanner"/],
  [
    'a sensor on a runner and a collector',
    (d) => (d.sensors[0].on = { runner: d.runners[0].id, merge: d.merges[0].id }),
    'sensors/lambda/on',
    /a runner and a collector/,
    /one of the two/,
  ],
  ['a title of two lines', (d) => (d.title = 'a\nb'), 'title', /"a\\nb"/, /one line/],
  ['a title without end', (d) => (d.title = 'x'.repeat(5000)), 'title', /x…"$/, /1000/],
  ['a number as text', (d) => (d.tubes.primary.wall = '1.5'), 'tubes/primary/wall', /"1\.5"/, /a number above 0/],
  ['null for an optional field', (d) => (d.ports[0].bundle = null), 'ports/p1/bundle', /null/, /a number from 0/],
  [
    'a point of two numbers',
    (d) => (d.runners[0].points[2] = [1, 2]),
    'runners/r1/points/2',
    /\[1, 2\]/,
    /three numbers/,
  ],
  [
    'a coordinate out of this world',
    (d) => (d.ports[0].position[1] = 1e6),
    'ports/p1/position/1',
    /1000000/,
    /100000 mm/,
  ],
  ['NaN', (d) => (d.runners[0].points[1][2] = Number.NaN), 'runners/r1/points/1/2', /NaN/, /finite/],
  [
    'infinity',
    (d) => (d.groups.primaries.length = Number.POSITIVE_INFINITY),
    'groups/primaries/length',
    /Infinity/,
    /finite/,
  ],
  ['NaN in an unknown field', (d) => (d.other = { deep: [Number.NaN] }), 'other/deep/0', /NaN/, /finite/],
  ['a date', (d) => (d.made = new Date(0)), 'made', /a class/, /plain data/],
  [
    'an opening of unknown shape',
    (d) => (d.ports[0].opening.shape = 'star'),
    'ports/p1/opening/shape',
    /"star"/,
    /"round"/,
  ],
  [
    'a surrounding of unknown shape',
    (d) => (d.surroundings[0].shape = 'cone'),
    'surroundings/steering shaft/shape',
    /"cone"/,
    /"capsule"/,
  ],
  ['an unknown pattern', (d) => (d.merges[0].pattern = 'star'), 'merges/m1/pattern', /"star"/, /"ring", "line"/],
  ['an unknown joint', (d) => (d.merges[1].outletJoint = 'glue'), 'merges/m2/outletJoint', /"glue"/, /"slip"/],
  [
    'an unknown making',
    (d) => (d.tooling.primary.making = 'cast'),
    'tooling/primary/making',
    /"cast"/,
    /"bent", "welded"/,
  ],
  ['locked as text', (d) => (d.runners[0].locked = 'yes'), 'runners/r1/locked', /"yes"/, /true or false/],
  ['a runner from nowhere', (d) => (d.runners[0].from = {}), 'runners/r1/from', /an object/, /"port"/],
  [
    'a runner from two places',
    (d) => (d.runners[2].from.port = 'p1'),
    'runners/s1/from',
    /a port and a merge/,
    /one of the two/,
  ],
  ['a negative clearance', (d) => (d.clearance.tubeToTube = -1), 'clearance/tubeToTube', /-1/, /from 0/],
  ['a negative tolerance', (d) => (d.groups.primaries.tolerance = -1), 'groups/primaries/tolerance', /-1/, /from 0/],
  ['a group of length zero', (d) => (d.groups.primaries.length = 0), 'groups/primaries/length', /^0$/, /above 0.*null/],
  ['half a bend', (d) => (d.tooling.primary.maxBends = 2.5), 'tooling/primary/maxBends', /2\.5/, /whole number/],
  [
    'no bend angle',
    (d) => (d.tooling.primary.maxBendAngle = 0),
    'tooling/primary/maxBendAngle',
    /^0$/,
    /above 0, at most 360/,
  ],
  [
    'more than a turn',
    (d) => (d.tooling.primary.maxBendAngle = 361),
    'tooling/primary/maxBendAngle',
    /361/,
    /at most 360/,
  ],
  ['a merge without inlets', (d) => (d.merges[0].inlets = 0), 'merges/m1/inlets', /^0$/, /from 1 to 16/],
  ['a sideways convergence', (d) => (d.merges[0].convergence = 90), 'merges/m1/convergence', /90/, /from 0 to 80/],
  ['a merge of no length', (d) => (d.merges[0].length = 0), 'merges/m1/length', /^0$/, /above 0/],
  ['one point', (d) => (d.runners[0].points = [[0, 0, 0]]), 'runners/r1/points', /a list of 1/, /at least two/],

  ['an id with a slash', (d) => (d.runners[0].id = '../r1'), 'runners/0/id', /"\.\.\/r1"/, /letters/],
  ['an empty id', (d) => (d.merges[0].id = ''), 'merges/0/id', /""/, /letters/],
  ['an id of spaces', (d) => (d.ports[0].id = '  '), 'ports/0/id', / /, /letters/],
  ['an id too long', (d) => (d.runners[3].id = 'x'.repeat(65)), 'runners/3/id', /x…/, /1 to 64/],
  ['an id with a line break', (d) => (d.runners[3].id = 'a\n'), 'runners/3/id', /"a\\n"/, /letters/],
  ['an id that is a number', (d) => (d.runners[3].id = 7), 'runners/3/id', /^7$/, /in double quotes/],
  ['the one id no record can hold', (d) => (d.runners[3].id = '__proto__'), 'runners/3/id', /__proto__/, /letters/],
  ['a tube name with a slash', (d) => (d.tubes['a/b'] = d.tubes.primary), 'tubes/"a/b"', /"a\/b"/, /letters/],
  ...(['ports', 'flanges', 'merges', 'runners', 'surroundings'] as const).map(
    (list) =>
      [
        `an id twice in ${list}, ignoring case`,
        (d: Record<string, { id: string }[]>) => (d[list]![1]!.id = capitals(d[list]![0]!.id)),
        `${list}/1/id`,
        /again$/,
        /not yet used/,
      ] as const,
  ),
  ...(['tubes', 'tooling', 'groups'] as const).map(
    (record) =>
      [
        `a name twice in ${record}, ignoring case`,
        (d: Record<string, Record<string, unknown>>) => {
          const [name, entry] = Object.entries(d[record]!)[0]!;
          d[record]![capitals(name)] = entry;
        },
        `${record}/${record === 'groups' ? 'PRIMARIES' : 'PRIMARY'}`,
        /again$/,
        /not yet used/,
      ] as const,
  ),

  [
    'a runner from a missing port',
    (d) => (d.runners[0].from.port = 'p9'),
    'runners/r1/from/port',
    /"p9"/,
    /"p1", "Port_2-b c", "3"/,
  ],
  ['a port in other capitals', (d) => (d.runners[0].from.port = 'P1'), 'runners/r1/from/port', /"P1"/, /"p1"/],
  [
    'a runner from a missing merge',
    (d) => (d.runners[2].from.merge = 'm9'),
    'runners/s1/from/merge',
    /"m9"/,
    /"m1", "m2"/,
  ],
  ['a runner to a missing merge', (d) => (d.runners[0].to.merge = 'm9'), 'runners/r1/to/merge', /"m9"/, /"m1", "m2"/],
  ['a runner of a missing tube', (d) => (d.runners[0].tube = 'toString'), 'runners/r1/tube', /"toString"/, /"primary"/],
  [
    'a runner without tooling',
    (d) => delete d.tooling.secondary,
    'runners/s1/tube',
    /"secondary"/,
    /tooling.*"primary"/,
  ],
  ['a runner of a missing group', (d) => (d.runners[0].group = 'x'), 'runners/r1/group', /"x"/, /"primaries"/],
  ['a flange on a missing port', (d) => (d.flanges[0].ports[2] = 'p9'), 'flanges/f1/ports/2', /"p9"/, /"p1"/],
  ['a flange with a port twice', (d) => (d.flanges[0].ports[2] = 'p1'), 'flanges/f1/ports/2', /"p1" again/, /once/],
  ['an inlet too far', (d) => (d.runners[0].to.inlet = 3), 'runners/r1/to/inlet', /^3$/, /from 1 to 2/],
  ['inlet nought', (d) => (d.runners[0].to.inlet = 0), 'runners/r1/to/inlet', /^0$/, /from 1/],
  ['half an inlet', (d) => (d.runners[0].to.inlet = 1.5), 'runners/r1/to/inlet', /1\.5/, /whole number/],
  [
    'two runners on one inlet',
    (d) => (d.runners[1].to.inlet = 1),
    'runners/r2/to/inlet',
    /inlet 1 of "m1", where runner "r1" is/,
    /one runner/,
  ],
  [
    'two runners from one port',
    (d) => (d.runners[1].from.port = 'p1'),
    'runners/r2/from/port',
    /port "p1", where runner "r1" is/,
    /one runner/,
  ],
  [
    'two runners from one outlet',
    (d) => (d.runners[3].from = { merge: 'm1' }),
    'runners/stray/from/merge',
    /outlet of "m1", where runner "s1" is/,
    /one runner/,
  ],
  [
    'too many runners for a merge',
    (d) => (d.runners[3].to.merge = 'm1'),
    'merges/m1/inlets',
    /2 for 3 runners/,
    /at least 3/,
  ],
  ['a merge into itself', (d) => (d.runners[2].to.merge = 'm1'), 'merges/m1/inlets', /2 for 3/, /at least 3/],
  [
    'merges in a circle',
    (d) => {
      delete d.merges[1].outletJoint;
      d.runners[3] = { id: 'back', tube: 'primary', from: { merge: 'm2' }, to: { merge: 'm1' } };
      d.merges[0].inlets = 3;
    },
    'runners/back/to/merge',
    /m1 → m2 → m1/,
    /never comes back/,
  ],
  [
    'a joint where a runner follows',
    (d) => (d.merges[0].outletJoint = 'slip'),
    'merges/m1/outletJoint',
    /"slip"/,
    /"s1" follows/,
  ],
  ['a cylinder that is not there', (d) => (d.ports[0].cylinder = 4), 'ports/p1/cylinder', /^4$/, /from 1 to 3/],
  [
    'a firing order with a cylinder twice',
    (d) => (d.engine.firingOrder = [1, 3, 3]),
    'engine/firingOrder/2',
    /cylinder 3 again/,
    /once/,
  ],
  ['a firing order too short', (d) => (d.engine.firingOrder = [1, 3]), 'engine/firingOrder', /\[1, 3\]/, /all 3/],
  ['a cylinder on two banks', (d) => (d.engine.banks = [[1, 2], [2]]), 'engine/banks/1/0', /cylinder 2 again/, /once/],
  [
    'speeds the wrong way round',
    (d) => (d.engine.rpm = [7000, 1000]),
    'engine/rpm',
    /\[7000, 1000\]/,
    /lower speed first/,
  ],

  ['a zero direction', (d) => (d.ports[0].direction = [0, 0, 0]), 'ports/p1/direction', /\[0, 0, 0\]/, /1e-9/],
  ['a direction as good as zero', (d) => (d.ports[0].direction = [0, 1e-10, 0]), 'ports/p1/direction', /1e-10/, /1e-9/],
  ['a zero up', (d) => (d.ports[0].up = [0, 0, 0]), 'ports/p1/up', /\[0, 0, 0\]/, /1e-9/],
  [
    'up along the direction',
    (d) => (d.ports[0].up = [0, -3, 0]),
    'ports/p1/up',
    /along direction/,
    /not along direction/,
  ],
  ['a zero axis', (d) => (d.merges[0].axis = [0, 0, 0]), 'merges/m1/axis', /\[0, 0, 0\]/, /1e-9/],
  ['up along the axis', (d) => (d.merges[0].up = [0, -0.6, 2]), 'merges/m1/up', /along axis/, /not along axis/],
  [
    'a zero axis of a pose',
    (d) => (d.surroundings[2].pose.x = [0, 0, 0]),
    'surroundings/bay scan/pose/x',
    /\[0, 0, 0\]/,
    /1e-9/,
  ],
  [
    'axes of a pose along each other',
    (d) => (d.surroundings[2].pose.y = [2, 0, 0]),
    'surroundings/bay scan/pose/y',
    /along x/,
    /not along x/,
  ],
  [
    'a wall as thick as the tube',
    (d) => (d.tubes.primary.wall = 21.2),
    'tubes/primary/wall',
    /21\.2/,
    /less than half/,
  ],
  ['a merge wall as thick as its outlet', (d) => (d.merges[0].wall = 30), 'merges/m1/wall', /30/, /less than half/],
  [
    'no outside diameter',
    (d) => (d.tubes.primary.outsideDiameter = 0),
    'tubes/primary/outsideDiameter',
    /^0$/,
    /above 0/,
  ],
  [
    'a die tighter than the tube',
    (d) => (d.tooling.primary.centerlineRadius = 21),
    'tooling/primary/centerlineRadius',
    /21/,
    /at least half/,
  ],
  [
    'another die tighter than the tube',
    (d) => (d.tooling.primary.otherRadii[1] = 21),
    'tooling/primary/otherRadii/1',
    /21/,
    /at least half/,
  ],
  [
    'a radius tighter than the tube',
    (d) => (d.runners[0].radii[1] = 21),
    'runners/r1/radii/1',
    /21/,
    /at least half the outside diameter, 21\.2 mm/,
  ],
  ['a radius of zero', (d) => (d.runners[0].radii[1] = 0), 'runners/r1/radii/1', /^0$/, /above 0/],
  ['a radius too many', (d) => d.runners[0].radii.push(63.6), 'runners/r1/radii', /3 radii/, /^2, one for each/],
  ['radii without points', (d) => (d.runners[1].radii = [63.6]), 'runners/r2/radii', /1 radii/, /none before/],
  [
    'coincident points',
    (d) => (d.runners[0].points[2] = [0, 120, 5e-7]),
    'runners/r1/points/2',
    /the place of point 1/,
    /1e-6|0\.000001/,
  ],
  [
    'a corner larger than the opening',
    (d) => (d.ports[1].opening.corner = 15.1),
    'ports/Port_2-b c/opening/corner',
    /15\.1/,
    /half the shorter side, 15 mm/,
  ],
  ['a box inside out', (d) => (d.surroundings[1].min[2] = 101), 'surroundings/head/min', /101/, /smaller x, y and z/],
  [
    'a mesh in a folder',
    (d) => (d.surroundings[2].file = '../bay.stl'),
    'surroundings/bay scan/file',
    /"\.\.\/bay\.stl"/,
    /without folders/,
  ],
  [
    'a mesh in a folder, the other way',
    (d) => (d.surroundings[2].file = 'a\\bay.stl'),
    'surroundings/bay scan/file',
    /bay/,
    /without folders/,
  ],
  [
    'a mesh that is the folder',
    (d) => (d.surroundings[2].file = '..'),
    'surroundings/bay scan/file',
    /"\.\."/,
    /without folders/,
  ],
  [
    'a mesh without a name',
    (d) => (d.surroundings[2].file = ''),
    'surroundings/bay scan/file',
    /""/,
    /without folders/,
  ],

  ['too many runners', (d) => (d.runners = Array(129).fill(d.runners[0])), 'runners', /a list of 129/, /at most 128/],
  [
    'too many points',
    (d) => (d.runners[0].points = Array(101).fill([0, 0, 0])),
    'runners/r1/points',
    /a list of 101/,
    /at most 100/,
  ],
  [
    'points of a runner that is not laid out',
    (d) => (d.runners[0].points = []),
    'runners/r1/points',
    /\[\]/,
    /at least two points.*leave points out where it is not laid out yet/,
  ],
  ['too many inlets', (d) => (d.merges[0].inlets = 1e6), 'merges/m1/inlets', /1000000/, /from 1 to 16/],
  ['too many values', (d) => (d.other = Array(200_001).fill(0)), 'document', /more than 200000/, /at most/],
];

test('the document that is spoilt below is accepted', () => {
  expect(() => parseDesign(good)).not.toThrow();
});

describe.each(spoilings)('%s', (_name, spoil, path, found, allowed) => {
  test('is refused, naming the place, what was found and what is allowed', () => {
    const error = spoilt(spoil);
    expect(error.path).toBe(path);
    expect(error.found).toMatch(found);
    expect(error.allowed).toMatch(allowed);
    expect(error.message).toContain(`${error.path}: found ${error.found}; allowed: ${error.allowed}`);
    expect(error.message).not.toMatch(/[\r\n]/);
  });
});

test('a document that holds itself is refused, not followed', () => {
  expect(spoilt((d) => (d.self = d)).found).toBe('a deeper level');
});

test('every refusal of a stage is collected; the message shows the first and counts the rest', () => {
  const error = spoilt((d) => {
    d.runners[0].to.inlet = 7;
    d.tubes.primary.wall = 40;
    d.merges[0].up = [0, 0, 0];
  });
  expect(error.problems.map((p) => p.path)).toEqual(['runners/r1/to/inlet', 'tubes/primary/wall', 'merges/m1/up']);
  expect(error.message).toMatch(/^runners\/r1\/to\/inlet: .* \(and 2 more\)$/);
});

test('after the first of two equal ids the index takes over', () => {
  const error = spoilt((d) => {
    d.runners[1].id = 'r1';
    d.runners[1].to.inlet = 9;
  });
  expect(error.problems.map((p) => p.path)).toEqual(['runners/1/id', 'runners/1/to/inlet']);
});

const texts: readonly (readonly [name: string, text: string, path: string, found: RegExp, allowed: RegExp])[] = [
  ['an empty file', '', 'line 1, column 1', /end of the file/, /\{/],
  ['words', 'ISO-10303-21;', 'line 1, column 1', /"ISO-10303-21"/, /a number/],
  [
    'a file cut short',
    good.slice(0, good.indexOf('"display"') + 4),
    'line 5, column 7',
    /end of the file/,
    /closing double quote/,
  ],
  [
    'a file cut between values',
    good.slice(0, good.indexOf('"display"')),
    'line 5, column 3',
    /end of the file/,
    /double quotes/,
  ],
  ['a comma too many', '{\n  "format": "evenrun-design",\n}', 'line 3, column 1', /"\}"/, /double quotes/],
  ['a comma too few', '{ "a": 1 "b": 2 }', 'line 1, column 10', /"\\""/, /"," or "\}"/],
  ['a comment', '{ // hello\n}', 'line 1, column 3', /"\/"/, /double quotes/],
  ['NaN', '{ "a": NaN }', 'line 1, column 8', /"NaN"/, /a number/],
  ['a number with a plus', '{ "a": +1 }', 'line 1, column 8', /"\+1"/, /a number/],
  ['a number with a leading nought', '[01]', 'line 1, column 3', /"1"/, /"," or "\]"/],
  ['text after the end', '{} {}', 'line 1, column 4', /"\{"/, /nothing after/],
  ['a control character in text', '{ "a": "b\tc" }', 'line 1, column 10', /"\\t"/, /control character/],
  ['an escape that is none', '{ "a": "\\x41" }', 'line 1, column 9', /"\\\\"/, /escape/],
  ['a number too large to hold', '{ "a": { "b": [1, 1e999] } }', 'a/b/1', /"1e999"/, /finite/],
  ['a key twice', '{ "tubes": { "a": 1, "a": 2 } }', 'tubes/a', /"a" twice/, /once \(line 1/],
  ['a key that changes what objects are', '{ "a": { "__proto__": {} } }', 'a/__proto__', /"__proto__"/, /any other/],
  ['a tower of lists', `${'['.repeat(100_000)}`, Array(32).fill('0').join('/'), /deeper/, /at most 32 levels/],
  ['a list at the top', '[]', 'document', /\[\]/, /an object/],
  ['null', 'null', 'document', /null/, /an object/],
  ['a file without end', ' '.repeat(8 * 1024 * 1024 + 1), 'document', /8388609 bytes/, /at most 8388608/],
];

describe.each(texts)('text: %s', (_name, text, path, found, allowed) => {
  test('is refused', () => {
    const error = refusal(() => parseDesign(text));
    expect(error.path).toBe(path);
    expect(error.found).toMatch(found);
    expect(error.allowed).toMatch(allowed);
    expect(error.message).not.toMatch(/[\r\n]/);
  });
});

test('a byte order mark is no reason to refuse', () => {
  expect(() => parseDesign(`\ufeff${good}`)).not.toThrow();
});

test('a key that changes what objects are is refused in a value too', () => {
  const design: unknown = JSON.parse(good.replace('"display"', '"__proto__": {}, "display"'));
  expect(refusal(() => validateDesign(design)).path).toBe('__proto__');
});
