/** What is no engine that can be followed: one line each, with the place, what was found and what would mend it. */
import { describe, expect, test } from 'vitest';
import { DesignError } from '../../../shared/design/parse';
import type { Design, Engine, Valve } from '../../../shared/design/types';
import { engineSetup } from '../../../src/pulse/engine/setup';
import { designOf, FOUR } from './designs';

function refusal(design: Design): DesignError {
  try {
    engineSetup(design);
  } catch (error) {
    expect(error).toBeInstanceOf(DesignError);
    return error as DesignError;
  }
  throw new Error('was accepted');
}

const { bore, stroke } = FOUR;
const INTAKE: Valve = { count: 2, diameter: 33, lift: 9.8, opens: -12, closes: 228 };
const EXHAUST: Valve = { count: 2, diameter: 28, lift: 9, opens: -232, closes: 10 };

type Row = readonly [name: string, engine: Engine, path: string, found: RegExp, allowed: RegExp];
const rows: readonly Row[] = [
  ['no bore', { cylinders: 4, stroke }, 'engine/bore', /^nothing$/, /^diameter of a cylinder.* mm.*without it/],
  ['no stroke', { cylinders: 4, bore }, 'engine/stroke', /^nothing$/, /^how far a piston travels.* mm.*without it/],
  ['no cylinders', { bore, stroke }, 'engine/cylinders', /^nothing$/, /how many cylinders/],
  [
    'a bore in cm',
    { ...FOUR, bore: 8.6 },
    'engine/bore',
    /^8\.6$/,
    /from 20 to 250 mm .*in cm × 10, in inches × 25\.4/,
  ],
  ['a stroke in inches', { ...FOUR, stroke: 3.4 }, 'engine/stroke', /^3\.4$/, /in inches × 25\.4/],
  ['a bore in µm', { ...FOUR, bore: 86_000 }, 'engine/bore', /^86000$/, /from 20 to 250 mm/],
  ['a rod within the crank', { ...FOUR, rod: 43 }, 'engine/rod', /^43 mm$/, /more than half the stroke, 43 mm/],
  ['a diesel and more', { ...FOUR, compressionRatio: 30 }, 'engine/compressionRatio', /^30$/, /from 4 to 25/],
  ['a speed in 1/s', { ...FOUR, rpm: [25, 350] }, 'engine/rpm/0', /^25$/, /from 300 to 25000 rpm/],
  [
    'firing angles without an order to go by',
    { bore, stroke, banks: [[1, 2]], firingAngles: [0, 240, 480] },
    'engine/firingAngles',
    /\[0, 240, 480\]/,
    /^2, one for each cylinder of 1-2$/,
  ],

  [
    'a lift in inches',
    { ...FOUR, intakeValve: { ...INTAKE, lift: 0.37 } },
    'engine/intakeValve/lift',
    /^0\.37 mm .* 33 mm/,
    /from 1\.7 to 19\.8 mm.*inches/,
  ],
  [
    'a measured lift in inches',
    {
      ...FOUR,
      exhaustValve: {
        ...EXHAUST,
        lifts: [
          [-232, 0],
          [-110, 0.35],
          [10, 0],
        ],
      },
    },
    'engine/exhaustValve/lifts',
    /^0\.35 mm at most/,
    /× 25\.4/,
  ],
  [
    'a lift like a door’s',
    { ...FOUR, exhaustValve: { ...EXHAUST, lift: 20 } },
    'engine/exhaustValve/lift',
    /^20 mm/,
    /to 16\.8 mm/,
  ],
  [
    'a valve in inches',
    { ...FOUR, intakeValve: { ...INTAKE, diameter: 1.3, lift: 0.37 } },
    'engine/intakeValve/diameter',
    /^1\.3 mm$/,
    /from 8 to 120 mm.*inches/,
  ],
  [
    'valves that a head has no room for',
    { ...FOUR, intakeValve: { ...INTAKE, diameter: 58, lift: 12 } },
    'engine/intakeValve/diameter',
    /^2 × 58 mm and 2 × 28\.4 mm$/,
    /no more than the bore of 86 mm/,
  ],

  [
    'an intake in metres',
    { ...FOUR, intake: { runnerLength: 0.35 } },
    'engine/intake/runnerLength',
    /^0\.35 mm$/,
    /at least 30 mm.*in m × 1000/,
  ],
  [
    'an intake’s bore in cm',
    { ...FOUR, intake: { runnerDiameter: 4.3 } },
    'engine/intake/runnerDiameter',
    /^4\.3 mm$/,
    /at least 18\.1 mm .*in cm × 10/,
  ],
  [
    'a throttle in m',
    { ...FOUR, intake: { throttleDiameter: 0.06 } },
    'engine/intake/throttleDiameter',
    /^0\.06 mm$/,
    /at least 18\.1 mm .*in cm × 10/,
  ],
  [
    'a plenum in litres',
    { ...FOUR, intake: { plenumVolume: 3 } },
    'engine/intake/plenumVolume',
    /^3 cm³$/,
    /^0 for none, or at least 50 cm³.*in litres × 1000/,
  ],
];

test.each(rows)('%s', (_, engine, path, found, allowed) => {
  const { problems, message } = refusal(designOf(engine));
  expect(problems.map((p) => p.path)).toEqual([path]);
  expect(problems[0]!.found).toMatch(found);
  expect(problems[0]!.allowed).toMatch(allowed);
  expect(message).not.toMatch(/[\r\n]/);
});

test('one bank’s ports do not tell how many cylinders the other has', () => {
  const { problems } = refusal(designOf({ bore, stroke }, [1, 3, 5, 7]));
  expect(problems).toEqual([
    {
      path: 'engine/cylinders',
      found: 'nothing, and ports with cylinders 1, 3, 5, 7 alone',
      allowed: 'how many cylinders the engine has',
    },
  ]);
});

test('a design without an engine is told all that is needed at once', () => {
  const { engine: _, ...design } = designOf({});
  expect(refusal(design).problems.map((p) => p.path)).toEqual(['engine/cylinders', 'engine/bore', 'engine/stroke']);
});

test('all that is wrong is told at once, also of valves where the bore is not known', () => {
  const engine: Engine = { cylinders: 4, stroke, intakeValve: { ...INTAKE, opens: 12, closes: 48 } };
  expect(refusal(designOf(engine)).problems.map((p) => p.path)).toEqual(['engine/bore', 'engine/intakeValve/opens']);
});

/** Which events of a valve are refused, and as what they are recognised. */
type EventRow = readonly [name: string, events: readonly [number, number], found: RegExp, remedy: RegExp];
const none = /$^/;
const intake: readonly EventRow[] = [
  [
    'a cam card',
    [12, 48],
    /open for 36°, where 120 to 360 are possible/,
    /degrees before and after the dead centres, here they are opens -12, closes 228$/,
  ],
  [
    'a closing from the bottom',
    [-12, 48],
    /open for 60°/,
    /from the dead centre next to each event, .* opens -12, closes 228$/,
  ],
  [
    'from firing top dead centre',
    [348, 588],
    /^opens 348, closes 588$/,
    /firing top dead centre, here they are opens -12, closes 228$/,
  ],
  [
    'from the firing one before',
    [-372, -132],
    /^opens -372, closes -132$/,
    /firing top dead centre, .* opens -12, closes 228$/,
  ],
  ['opening a cycle later', [708, 228], /it never opens/, /an opening told a cycle later, .* opens -12, closes 228$/],
  [
    'closing a cycle earlier',
    [-12, -492],
    /it never opens/,
    /a closing told a cycle earlier, .* opens -12, closes 228$/,
  ],
  ['exchanged events', [228, -12], /it never opens/, /closing and opening exchanged, .* opens -12, closes 228$/],
  ['camshaft degrees', [-6, 114], /^opens -6, closes 114$/, /degrees of the camshaft, .* opens -12, closes 228$/],
  [
    'lobe centre and duration',
    [108, 240],
    /^opens 108, closes 240$/,
    /a lobe centre and a duration, .* opens -12, closes 228$/,
  ],
  [
    'an exhaust valve’s',
    [-232, 10],
    /^opens -232, closes 10$/,
    /where exhaust valves open and close: are the two exchanged\?$/,
  ],
  ['never open', [100, 100], /it never opens/, none],
  ['too long', [-100, 300], /open for 400°, where 120 to 360/, none],
  ['too short', [60, 150], /open for 90°/, none],
];
const exhaust: readonly EventRow[] = [
  ['a cam card', [52, 10], /it never opens/, /degrees before and after the dead centres, .* opens -232, closes 10$/],
  [
    'from the dead centre next to it',
    [-52, 10],
    /open for 62°/,
    /dead centre next to each event, .* opens -232, closes 10$/,
  ],
  ['without its minus', [232, 10], /it never opens/, /an opening without its minus, .* opens -232, closes 10$/],
  [
    'from firing top dead centre',
    [128, 370],
    /^opens 128, closes 370$/,
    /firing top dead centre, .* opens -232, closes 10$/,
  ],
  ['from the firing one before', [-592, -350], /^opens/, /firing top dead centre, .* opens -232, closes 10$/],
  ['opening a cycle later', [488, 10], /it never opens/, /an opening told a cycle later, .* opens -232, closes 10$/],
  ['a cycle later', [480, 700], /^opens/, /a whole cycle later, .* opens -240, closes -20$/],
  ['camshaft degrees', [-116, 5], /^opens -116, closes 5$/, /degrees of the camshaft, .* opens -232, closes 10$/],
  ['lobe centre and duration', [111, 242], /^opens/, /a lobe centre and a duration, .* opens -232, closes 10$/],
  [
    'an intake valve’s',
    [-12, 228],
    /^opens -12, closes 228$/,
    /where intake valves open and close: are the two exchanged\?$/,
  ],
];

describe.each([
  ['intake', intake],
  ['exhaust', exhaust],
] as const)('%s events in another convention', (side, events) => {
  const valve = side === 'intake' ? INTAKE : EXHAUST;
  const key = `${side}Valve` as const;

  test.each(events)('%s', (_, [opens, closes], found, remedy) => {
    const { problems } = refusal(designOf({ ...FOUR, [key]: { ...valve, opens, closes } }));
    expect(problems.map((p) => p.path)).toEqual([`engine/${key}/opens`]);
    expect(problems[0]!.found).toMatch(found);
    const [convention, told = '', ...more] = problems[0]!.allowed.split('; ');
    expect(convention).toMatch(/^crank degrees from top dead centre of the exhaust stroke, such as opens -\d+, closes/);
    if (remedy === none) expect(told).toBe('');
    else expect(told).toMatch(remedy);
    expect(more).toEqual([]);
  });

  // All that a road or racing engine may have is let through, said in our convention.
  test.each(
    side === 'intake'
      ? [
          [-12, 228],
          [-70, 280],
          [10, 200],
          [40, 190],
        ]
      : [
          [-232, 10],
          [-285, 75],
          [-200, -10],
          [-190, 0],
        ],
  )('opens %d, closes %d is let through', (opens, closes) => {
    expect(() => engineSetup(designOf({ ...FOUR, [key]: { ...valve, opens, closes } }))).not.toThrow();
  });

  test('a design that holds them still loads: only following its engine is refused', () => {
    for (const [, [opens, closes]] of events)
      expect(() => designOf({ ...FOUR, [key]: { ...valve, opens, closes } })).not.toThrow();
  });
});

describe('a measured lift curve', () => {
  const moved = (by: number, times = 1): Valve['lifts'] =>
    [
      [-40, 0],
      [-12, 0],
      [108, 9.8],
      [228, 0],
      [260, 0],
    ].map(([angle, lift]) => [times * angle! + by, lift!] as const);
  const withLifts = (lifts: Valve['lifts'], rest: Partial<Valve> = {}): Design =>
    designOf({ ...FOUR, intakeValve: { ...INTAKE, ...rest, lifts: lifts! } });

  test('stands in for the events, whatever they are', () => {
    expect(() => engineSetup(withLifts(moved(0), { opens: 12, closes: 48 }))).not.toThrow();
  });

  test.each([
    [
      'the firing top dead centre',
      moved(360),
      /^opens 348, closes 588$/,
      /firing top dead centre, .* opens -12, closes 228$/,
    ],
    ['the camshaft', moved(0, 0.5), /^opens -6, closes 114$/, /degrees of the camshaft, .* opens -12, closes 228$/],
    ['the bottom', moved(180), /^opens 168, closes 408$/, none],
  ] as const)('counted from %s is refused', (_, lifts, found, remedy) => {
    const { problems } = refusal(withLifts(lifts));
    expect(problems.map((p) => p.path)).toEqual(['engine/intakeValve/lifts']);
    expect(problems[0]!.found).toMatch(found);
    const told = problems[0]!.allowed.split('; ')[1] ?? '';
    if (remedy === none) expect(told).toBe('');
    else expect(told).toMatch(remedy);
  });
});
