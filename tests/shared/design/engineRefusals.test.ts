/** Refusals of what the engine model takes: a good document, one thing spoilt, and where, what was found and what is allowed. */
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { bmepOf, displacementOf, torqueProblems } from '../../../shared/design/baselineRules';
import { setBaseline } from '../../../shared/design/edit';
import { DesignError, validateDesign } from '../../../shared/design/parse';
import type { Engine } from '../../../shared/design/types';

const good = readFileSync(new URL('../../documents/v1/every-field.evenrun.json', import.meta.url), 'utf8');

// biome-ignore lint/suspicious/noExplicitAny: spoiling a document is the point
type Spoil = (engine: any, exhaust: any) => void;

const spoilings: readonly (readonly [name: string, spoil: Spoil, path: string, found: RegExp, allowed: RegExp])[] = [
  ['fewer firing angles than cylinders', (e) => e.firingAngles.pop(), 'firingAngles', /2 angles/, /^3, one for each/],
  [
    'as many as the engine has, where there is no firing order',
    (e) => {
      delete e.firingOrder;
      e.firingAngles.push(600);
    },
    'firingAngles',
    /4 angles/,
    /^3, .* of the engine; left out: evenly/,
  ],
  [
    'firing angles of nothing',
    (e) => {
      delete e.firingOrder;
      delete e.cylinders;
      delete e.banks;
      e.firingAngles = [];
    },
    'firingAngles',
    /no angle/,
    /one for each/,
  ],
  ['a first firing angle', (e) => (e.firingAngles[0] = 10), 'firingAngles/0', /^10$/, /^0: the first/],
  ['firing angles that fall', (e) => (e.firingAngles = [0, 480, 240]), 'firingAngles/2', /240 after 480/, /above/],
  ['a firing angle twice', (e) => (e.firingAngles = [0, 240, 240]), 'firingAngles/2', /240 after 240/, /above/],
  ['a cycle and more', (e) => (e.firingAngles[2] = 720), 'firingAngles/2', /^720$/, /below 720/],

  ['a lift below nothing', (e) => (e.intakeValve.lifts[1][1] = -1), 'intakeValve/lifts/1/1', /^-1$/, /from 0 .* mm/],
  [
    'two rows of lift',
    (e) => e.intakeValve.lifts.splice(1, 3),
    'intakeValve/lifts',
    /2 rows/,
    /three: shut, open, shut/,
  ],
  ['no rows of lift', (e) => (e.intakeValve.lifts = []), 'intakeValve/lifts', /0 rows/, /at least three/],
  [
    'lifts in disorder',
    (e) => (e.intakeValve.lifts[2][0] = 20),
    'intakeValve/lifts/2',
    /20 after 48/,
    /above the one before: .* the crank turns/,
  ],
  ['a first lift', (e) => (e.intakeValve.lifts[0][1] = 0.1), 'intakeValve/lifts/0/1', /^0\.1$/, /begins and ends/],
  ['a last lift', (e) => (e.intakeValve.lifts[4][1] = 0.1), 'intakeValve/lifts/4/1', /^0\.1$/, /begins and ends/],
  [
    'a valve that never lifts',
    (e) => {
      for (const row of e.intakeValve.lifts) row[1] = 0;
    },
    'intakeValve/lifts',
    /0 in every row/,
    /above 0 somewhere/,
  ],
  ['lifts of two turns', (e) => (e.intakeValve.lifts[0][0] = -490), 'intakeValve/lifts', /720° from/, /less than 720/],
  ['a row of three', (e) => e.intakeValve.lifts[1].push(1), 'intakeValve/lifts/1', /\[48, 6\.2, 1\]/, /two numbers/],
  ['a bench without rows', (e) => (e.intakeValve.flow = []), 'intakeValve/flow', /no rows/, /textbooks/],
  [
    'bench rows in disorder',
    (e) => (e.intakeValve.flow[2][0] = 0.1),
    'intakeValve/flow/2',
    /0\.1 after 0\.15/,
    /least lift/,
  ],
  [
    'a bench row by lift in mm',
    (e) => (e.intakeValve.flow[2][0] = 8),
    'intakeValve/flow/2/0',
    /^8$/,
    /32 mm valve is 0\.25/,
  ],
  ['no flow at all', (e) => (e.intakeValve.flow[0][1] = 0), 'intakeValve/flow/0/1', /^0$/, /above 0, at most 1/],
  ['flow in percent', (e) => (e.intakeValve.flow[0][1] = 68), 'intakeValve/flow/0/1', /^68$/, /above 0, at most 1/],
  [
    'the same of the exhaust valve',
    (e) => (e.exhaustValve.lifts = [[0, 1]]),
    'exhaustValve/lifts',
    /1 rows/,
    /at least three/,
  ],

  ['an intake of no length', (e) => (e.intake.runnerLength = 0), 'intake/runnerLength', /^0$/, /above 0.* mm/],
  ['an intake of no bore', (e) => (e.intake.runnerDiameter = 0), 'intake/runnerDiameter', /^0$/, /above 0.* mm/],
  ['a negative plenum', (e) => (e.intake.plenumVolume = -1), 'intake/plenumVolume', /^-1$/, /from 0 .* cm³/],
  ['a shut throttle', (e) => (e.intake.throttleDiameter = 0), 'intake/throttleDiameter', /^0$/, /above 0.* mm/],
  ['a mixture by mass', (e) => (e.combustion.lambda = 12.8), 'combustion/lambda', /^12\.8$/, /12\.8 kg .* 0\.88/],
  [
    'half burnt long after',
    (e) => (e.combustion.burnMiddle = 370),
    'combustion/burnMiddle',
    /^370$/,
    /-30 to 90 degrees/,
  ],
  ['a burn of no time', (e) => (e.combustion.burnDuration = 0), 'combustion/burnDuration', /^0$/, /from 10 to 180/],
  [
    'efficiency in percent',
    (e) => (e.combustion.efficiency = 95),
    'combustion/efficiency',
    /^95$/,
    /95 percent is 0\.95/,
  ],
  ['air in pascal', (e) => (e.air.pressure = 101325), 'air/pressure', /^101325$/, /101325 Pa .* 1013\.25/],
  ['air in inches of mercury', (e) => (e.air.pressure = 29.92), 'air/pressure', /^29\.92$/, /hPa .*29\.92/],
  ['air in kelvin', (e) => (e.air.temperature = 288.15), 'air/temperature', /^288\.15$/, /288\.15 K and 59 °F are 15/],
  ['flow fitted too far', (e) => (e.fitted.flow = 1.21), 'fitted/flow', /^1\.21$/, /from 0\.8 to 1\.2/],
  ['friction fitted too far', (e) => (e.fitted.friction = 0.4), 'fitted/friction', /^0\.4$/, /from 0\.5 to 1\.8/],
  ['heat fitted too far', (e) => (e.fitted.heat = 2.1), 'fitted/heat', /^2\.1$/, /from 0\.5 to 2/],

  ['a curve on nothing known', (e) => (e.baseline.on = 'stock'), 'baseline/on', /"stock"/, /"cast", "header"/],
  ['one point', (e) => e.baseline.points.splice(1), 'baseline/points', /one point/, /cannot tell .* flow .* friction/],
  ['two points', (e) => e.baseline.points.splice(2), 'baseline/points', /2 points/, /at least 3/],
  [
    'three speeds that are one',
    (e) =>
      (e.baseline.points = [
        [3000, 150],
        [3000.1, 150],
        [3000.2, 150],
      ]),
    'baseline/points',
    /3000 to 3000\.2 rpm/,
    /at least 1\.3 times the lowest/,
  ],
  ['no points', (e) => delete e.baseline.points, 'baseline/points', /nothing/, /a list/],
  [
    'speeds that fall',
    (e) => e.baseline.points.reverse(),
    'baseline/points/1',
    /6000 after 7000/,
    /slowest to the fastest/,
  ],
  ['thousands of turns', (e) => (e.baseline.points[0][0] = 2), 'baseline/points/0/0', /^2$/, /from 100 .* rpm/],
  ['torque that drives it', (e) => (e.baseline.points[0][1] = -5), 'baseline/points/0/1', /^-5$/, /above 0.* N m/],
  ['all of it lost', (e) => (e.baseline.loss = 100), 'baseline/loss', /^100$/, /from 0 to 50 percent/],

  ['a tailpipe of no bore', (_, x) => (x.tailpipe.bore = 0), '/exhaust/tailpipe/bore', /^0$/, /above 0.* mm/],
  ['a silencer that blows', (_, x) => (x.tailpipe.silencer = -1), '/exhaust/tailpipe/silencer', /^-1$/, /from 0/],
  ['half a cast manifold', (_, x) => delete x.cast.shared, '/exhaust/cast/shared', /nothing/, /length, bore/],
  ['a casting like gravel', (_, x) => (x.cast.roughness = 40), '/exhaust/cast/roughness', /^40$/, /from 0 to 5 mm/],
  [
    'a sketch of no kind',
    (_, x) => (x.sketch.arrangement = '4-1'),
    '/exhaust/sketch/arrangement',
    /"4-1"/,
    /"all-into-one"/,
  ],
  ['a sketch without primaries', (_, x) => delete x.sketch.primary, '/exhaust/sketch/primary', /nothing/, /length/],
  [
    'a sketched pipe of no length',
    (_, x) => (x.sketch.collector.length = 0),
    '/exhaust/sketch/collector/length',
    /0/,
    /above/,
  ],
];

test.each(spoilings)('%s', (_, spoil, path, found, allowed) => {
  const design = JSON.parse(good);
  spoil(design.engine, design.exhaust);
  let error: unknown;
  try {
    validateDesign(design);
  } catch (caught) {
    error = caught;
  }
  expect(error).toBeInstanceOf(DesignError);
  const { problems } = error as DesignError;
  expect(problems.map((p) => p.path)).toEqual([path.startsWith('/') ? path.slice(1) : `engine/${path}`]);
  expect(problems[0]!.found).toMatch(found);
  expect(problems[0]!.allowed).toMatch(allowed);
});

describe('a measured torque in another unit', () => {
  // A two-litre four; 10 bar are 79.58 N m a litre (reference value si.bmep).
  const engine: Engine = { cylinders: 4, bore: 86, stroke: 86 };
  const measured = (peak: number, loss = 0): Engine => ({
    ...engine,
    baseline: {
      points: [
        [2000, 0.8 * peak],
        [4500, peak],
        [6500, 0.9 * peak],
      ],
      loss,
    },
  });

  test('is judged by the mean effective pressure', () => {
    expect(displacementOf(engine)).toBeCloseTo(1998.2, 1);
    expect(bmepOf(79.58, 1000)).toBeCloseTo(10, 3);
    expect(displacementOf({ ...engine, cylinders: undefined } as unknown as Engine)).toBeNull();
  });

  test.each([
    ['a usual torque', measured(200)],
    ['a racing engine', measured(246)],
    ['a weak one, and what is lost on the way', measured(60, 20)],
    ['no curve', engine],
    ['a displacement that is not known', { baseline: measured(9000).baseline! }],
  ])('%s passes', (_, given) => {
    expect(torqueProblems(given)).toEqual([]);
  });

  test.each([
    [
      'kgf m',
      measured(20.4),
      /20\.4 N m at most, 1\.28 bar .* 1998 cm³/,
      /if it is kgf m, × 9\.80665; or another bore/,
    ],
    ['lb in', measured(1770), /111 bar/, /if it is lb in, × 0\.11298; or/],
    [
      'the displacement of one cylinder',
      { ...measured(200), cylinders: 1 },
      /50\.3 bar .* 500 cm³/,
      /3 to 16 bar .*another bore/,
    ],
    ['a blower', measured(300), /18\.9 bar/, /engines without a blower/],
  ])('%s is told', (_, given, found, allowed) => {
    const [problem, ...more] = torqueProblems(given);
    expect(more).toEqual([]);
    expect(problem!.path).toBe('engine/baseline/points/1/1');
    expect(problem!.found).toMatch(found);
    expect(problem!.allowed).toMatch(allowed);
  });

  test.each([
    [measured(200), 7121, /if it is power in hp, × 7121 \/ rpm in each row/],
    [measured(200), 9549, /if it is power in kW, × 9549 \/ rpm in each row/],
    [measured(160), 7022, /if it is power in hp/],
  ])('power in place of torque is told by how it rises: %#', (given, times, remedy) => {
    const points = given.baseline!.points.map(([rpm, torque]) => [rpm, (torque * rpm) / times] as const);
    const [problem, ...more] = torqueProblems({ ...given, baseline: { points } });
    expect(more).toEqual([]);
    expect(problem!.path).toBe('engine/baseline/points/2/1');
    expect(problem!.found).toMatch(/rising with speed as power does/);
    expect(problem!.allowed).toMatch(remedy);
    // What is within the bounds is not told to come within them.
    expect(/N m that make/.test(problem!.allowed)).toBe(!/\b([3-9]|1[0-5])(\.\d+)? bar/.test(problem!.found));
  });

  test('torque that rises far is still torque: a racing engine with a hole low down', () => {
    const points = [
      [2000, 80],
      [3500, 120],
      [5500, 190],
      [7000, 165],
    ] as const;
    expect(torqueProblems({ ...engine, baseline: { points } })).toEqual([]);
  });

  test('a unit is offered only where it makes sense', () => {
    expect(torqueProblems(measured(4))[0]!.allowed).toMatch(/do; or another bore/);
  });

  test('is refused where it is entered, and no bar to setting the bore right', () => {
    const design = validateDesign(JSON.parse(good));
    const points = [
      [2000, 11],
      [4000, 14],
      [6000, 13],
    ] as const;
    const entered = setBaseline(design, { points });
    expect(!entered.ok && entered.refusal.allowed).toMatch(/kgf m/);
    expect(setBaseline(design, { points: points.map(([n, t]) => [n, t * 9.80665]) }).ok).toBe(true);
    expect(() => validateDesign({ ...design, engine: { ...design.engine, bore: 30 } })).not.toThrow();
  });
});
