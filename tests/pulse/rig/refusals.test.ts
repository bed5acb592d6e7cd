/** One line a refusal: a good rig, one thing spoilt, and where, what was found and what is allowed. Long because it is a table. */
import { describe, expect, test } from 'vitest';
import { DesignError } from '../../../shared/design/refusal';
import { readRig } from '../../../src/pulse/rig/read';
import { contractRig, contractText, extendedRig, type Loose } from './contract';

function refusal(text: string): DesignError {
  try {
    readRig(text);
  } catch (error) {
    expect(error).toBeInstanceOf(DesignError);
    return error as DesignError;
  }
  throw new Error('was accepted');
}

type Line = readonly [name: string, spoil: (rig: Loose) => void, path: string, found: RegExp, allowed: RegExp];

const set =
  (path: string, value: unknown) =>
  (rig: Loose): void => {
    const steps = path.split('/');
    const last = steps.pop()!;
    steps.reduce((at, step) => at[step], rig)[last] = value;
  };
const drop =
  (path: string) =>
  (rig: Loose): void => {
    const steps = path.split('/');
    const last = steps.pop()!;
    delete steps.reduce((at, step) => at[step], rig)[last];
  };

const contract: readonly Line[] = [
  ['no format', drop('format'), 'format', /^nothing$/, /^"evenrun-rig"$/],
  ['a design', set('format', 'evenrun-design'), 'format', /evenrun-design/, /the design of a header/],
  ['a newer version', set('version', 2), 'version', /^2$/, /^1; .*newer Evenrun: update/],
  ['a version that never was', set('version', 0), 'version', /^0$/, /^1$/],
  ['no gas', drop('gas'), 'gas', /^nothing$/, /gamma, gasConstant/],
  ['a field that is not known', set('duratoin', 1), 'duratoin', /not known/, /duration, courant/],
  [
    'a mistyped field of a pipe',
    (r) => {
      r.pipes[0].fricton = 0;
      delete r.pipes[0].friction;
    },
    'pipes/a/fricton',
    /not known/,
    /did you mean "friction"\?$/,
  ],
  [
    'a mistyped field of the gas',
    (r) => {
      r.gas = { gama: 1.4, gasConstant: 287 };
    },
    'gas/gamma',
    /nothing/,
    /from 1\.001/,
  ],
  ['a mistyped field of an end', set('ends/0/kinds', 1), 'ends/0/kinds', /not known/, /^kind, at$/],
  ['gamma of 1', set('gas/gamma', 1), 'gas/gamma', /^1$/, /a number from 1\.001 to 3/],
  ['gamma as text', set('gas/gamma', '1.4'), 'gas/gamma', /"1\.4"/, /a number/],
  ['no gas constant', set('gas/gasConstant', 0), 'gas/gasConstant', /^0$/, /above 0/],
  ['no pressure outside', set('ambient/pressure', 0), 'ambient/pressure', /^0$/, /above 0/],
  ['temperature outside below zero', set('ambient/temperature', -3), 'ambient/temperature', /^-3$/, /above 0/],

  ['no pipes', set('pipes', []), 'pipes', /\[\]/, /a list of 1 to/],
  ['an id twice', set('pipes/1/id', 'a'), 'pipes/1/id', /"a" again/, /no other pipe/],
  ['an id of nothing', set('pipes/0/id', ''), 'pipes/0/id', /""/, /1 to 64 characters/],
  ['an id with a comma', set('pipes/0/id', 'a,b'), 'pipes/0/id', /"a,b"/, /without quotes, commas/],
  ['an id with a quote', set('pipes/0/id', 'a"b'), 'pipes/0/id', /a/, /without quotes/],
  ['an id with a line break', set('pipes/0/id', 'a\nb'), 'pipes/0/id', /"a\\nb"/, /line breaks/],
  ['no length', set('pipes/0/length', 0), 'pipes/a/length', /^0$/, /above 0, .* m$/],
  ['a length below zero', set('pipes/0/length', -1), 'pipes/a/length', /^-1$/, /above 0/],
  ['no cells', set('pipes/0/cells', 0), 'pipes/a/cells', /^0$/, /whole number from 1/],
  ['a pipe shorter than a cell', set('pipes/0/cells', 0.5), 'pipes/a/cells', /^0\.5$/, /whole number from 1 .*divide/],
  ['cells below nothing', set('pipes/0/cells', -2), 'pipes/a/cells', /^-2$/, /whole number from 1/],
  ['far too many cells', set('pipes/0/cells', 1e7), 'pipes/a/cells', /10000000/, /to 500000/],
  [
    'too many cells in all',
    (r) => {
      for (const p of r.pipes) p.cells = 200_000;
    },
    'pipes',
    /600000 cells in all/,
    /at most 500000 in all/,
  ],
  [
    'cells shorter than any wave can wait for',
    (r) => {
      r.pipes[0].length = 1e-9;
      r.pipes[0].diameter[1][0] = 1e-9;
      r.pipes[0].initial[0].to = 1e-9;
      r.probes = [];
    },
    'pipes/a/cells',
    /cells of 5\.00e-12 m.*cell updates/,
    /fewer cells, a longer pipe/,
  ],

  [
    'diameters from later than the start',
    set('pipes/0/diameter/0/0', 0.1),
    'pipes/a/diameter/0',
    /x = 0\.1/,
    /x = 0, where/,
  ],
  [
    'diameters not to the finish',
    set('pipes/0/diameter/1/0', 0.9),
    'pipes/a/diameter/1',
    /x = 0\.9/,
    /x = 1, the length/,
  ],
  [
    'diameters beyond the finish',
    set('pipes/0/diameter/1/0', 1.1),
    'pipes/a/diameter/1',
    /x = 1\.1/,
    /x = 1, the length/,
  ],
  [
    'diameters that go back',
    set('pipes/1/diameter', [
      [0, 0.04],
      [0.3, 0.05],
      [0.2, 0.05],
      [0.5, 0.05],
    ]),
    'pipes/b/diameter/2',
    /x = 0\.2 after 0\.3/,
    /above the line before/,
  ],
  [
    'two diameters at one place',
    set('pipes/1/diameter', [
      [0, 0.04],
      [0.2, 0.04],
      [0.2, 0.05],
      [0.5, 0.05],
    ]),
    'pipes/b/diameter/2',
    /two diameters at x = 0\.2/,
    /a widening with a "pressure-loss" junction, a narrowing with a "restriction"/,
  ],
  ['an area that vanishes', set('pipes/0/diameter/1/1', 0), 'pipes/a/diameter/1/1', /^0$/, /from 0\.000001/],
  [
    'an area that all but vanishes',
    set('pipes/0/diameter/1/1', 1e-9),
    'pipes/a/diameter/1/1',
    /^1e-9$/,
    /from 0\.000001/,
  ],
  [
    'one diameter',
    set('pipes/0/diameter', [[0, 0.04]]),
    'pipes/a/diameter',
    /a list of 1/,
    /2 to \d+ pairs \[x, diameter\]/,
  ],
  ['a diameter as a number', set('pipes/0/diameter', 0.04), 'pipes/a/diameter', /0\.04/, /pairs \[x, diameter\]/],
  ['friction below zero', set('pipes/0/friction', -0.01), 'pipes/a/friction', /-0\.01/, /from 0 to 1/],
  ['absurd friction', set('pipes/0/friction', 5), 'pipes/a/friction', /^5$/, /from 0 to 1/],
  [
    'friction as text',
    set('pipes/0/friction', 'smooth'),
    'pipes/a/friction',
    /"smooth"/,
    /a Fanning factor from 0 to 1, or \{ "roughness"/,
  ],
  ['roughness below zero', set('pipes/2/friction/roughness', -1), 'pipes/c/friction/roughness', /^-1$/, /from 0/],
  [
    'roughness above the radius',
    set('pipes/2/friction/roughness', 0.021),
    'pipes/c/friction/roughness',
    /0\.021/,
    /at most 0\.02 m, .*radius/,
  ],
  ['a wall of 0 K', set('pipes/1/wallTemperature', 0), 'pipes/b/wallTemperature', /^0$/, /above 0.* null/],
  [
    'a wall as hot as no wall',
    set('pipes/1/wallTemperature', 1e5),
    'pipes/b/wallTemperature',
    /100000/,
    /at most 10000 K/,
  ],

  ['no state', set('pipes/0/initial', []), 'pipes/a/initial', /\[\]/, /1 to/],
  [
    'no state at the start',
    set('pipes/0/initial/0/from', 0.1),
    'pipes/a/initial/0/from',
    /nothing from 0 to 0\.1 m/,
    /"from": 0/,
  ],
  [
    'no state at the finish',
    set('pipes/0/initial/0/to', 0.9),
    'pipes/a/initial/0/to',
    /nothing from 0\.9 to 1 m/,
    /"to": 1/,
  ],
  [
    'a gap between states',
    set('pipes/1/initial/1/from', 0.3),
    'pipes/b/initial/1/from',
    /nothing from 0\.25 to 0\.3 m/,
    /"from": 0\.25/,
  ],
  [
    'states over each other',
    set('pipes/1/initial/1/from', 0.2),
    'pipes/b/initial/1/from',
    /0\.2, where initial\/0 reaches to 0\.25/,
    /each place once/,
  ],
  ['a state beyond the pipe', set('pipes/0/initial/0/to', 2), 'pipes/a/initial/0/to', /^2$/, /at most 1 m/],
  ['a stretch of no length', set('pipes/1/initial/0/to', 0), 'pipes/b/initial/0/to', /0, from 0/, /more than 0/],
  ['no pressure', set('pipes/0/initial/0/pressure', 0), 'pipes/a/initial/0/pressure', /^0$/, /above 0/],
  ['no temperature', drop('pipes/0/initial/0/temperature'), 'pipes/a/initial/0/temperature', /nothing/, /above 0/],
  [
    'as hot as a star',
    set('pipes/0/initial/0/temperature', 2e5),
    'pipes/a/initial/0/temperature',
    /200000/,
    /at most 10000 K/,
  ],
  [
    'as fast as no gas',
    set('pipes/0/initial/0/velocity', -1e5),
    'pipes/a/initial/0/velocity',
    /-100000/,
    /50 times the fastest sound/,
  ],
  ['all but empty', set('pipes/0/initial/0/pressure', 1e-9), 'pipes/a/initial/0/pressure', /1e-9/, /no empty space/],
  ['fractions of one gas', set('ambient/fractions', { air: 1 }), 'ambient/fractions', /fractions/, /"components"/],

  [
    'an unknown kind of end',
    set('ends/0/kind', 'close'),
    'ends/0/kind',
    /"close"/,
    /one of "closed".*did you mean "closed"\?/,
  ],
  ['an end that is none', set('ends/0', null), 'ends/0', /null/, /an object whose "kind" is one of "closed"/],
  ['an end of a pipe that is not there', set('ends/0/at/0', 'x'), 'ends/0/at', /"x"/, /one of "a", "b", "c"/],
  ['a side that is none', set('ends/0/at/1', 'end'), 'ends/0/at/1', /"end"/, /"start", "finish"/],
  [
    'an end left out',
    (r) => r.ends.pop(),
    'ends',
    /no entry for the finish of pipe "c"/,
    /"closed", "through", "open", .*\["c", "finish"\]/,
  ],
  [
    'an end given twice',
    (r) => r.ends.push({ kind: 'open', at: ['a', 'start'] }),
    'ends/4/at',
    /the start of pipe "a", which ends\/0\/at has already/,
    /take it out of one/,
  ],
  [
    'an end twice in one junction',
    (r) => r.ends[1].at.push(['b', 'start']),
    'ends/1/at/3',
    /start of pipe "b", which ends\/1\/at\/1 has/,
    /once/,
  ],
  [
    'a junction of one',
    (r) => {
      r.ends[1].at = [['a', 'finish']];
    },
    'ends/1/at',
    /a list of 1/,
    /2 to 64 places/,
  ],
  [
    'an unknown model',
    set('ends/1/model', 'pressure'),
    'ends/1/model',
    /"pressure"/,
    /"equal-pressure", "pressure-loss"/,
  ],
  [
    'losses without angles',
    set('ends/1/model', 'pressure-loss'),
    'ends/1/model',
    /without angles/,
    /one for each of the 3 places/,
  ],
  ['too few angles', set('ends/1/angles', [0, 90]), 'ends/1/angles', /2 angles/, /each of the 3 places/],
  ['no volume', set('ends/3/volume', 0), 'ends/3/volume', /^0$/, /above 0/],
  [
    'a volume that is gone at once',
    set('ends/3/volume', 1e-14),
    'ends/3/volume',
    /1e-14 m³ behind 0\.000320 m².*cell updates/,
    /more volume, a smaller area or a shorter duration/,
  ],
  ['a vessel without pressure', set('ends/3/pressure', -1), 'ends/3/pressure', /^-1$/, /above 0/],
  ['a vessel at 0 K', set('ends/3/temperature', 0), 'ends/3/temperature', /^0$/, /above 0/],
  ['an area below zero', set('ends/3/area/1/1', -1e-4), 'ends/3/area/1/1', /-0\.0001/, /from 0/],
  ['no area', drop('ends/3/area'), 'ends/3/area', /nothing/, /\[time, area\].*or one area/],
  ['times that go back', set('ends/3/area/2/0', 0.001), 'ends/3/area/2', /0\.001 after 0\.002/, /a time after/],
  ['one time twice', set('ends/3/area/2/0', 0.002), 'ends/3/area/2', /0\.002 after 0\.002/, /a time after/],
  [
    'a coefficient of 0',
    set('ends/3/dischargeCoefficient', 0),
    'ends/3/dischargeCoefficient',
    /^0$/,
    /above 0, at most 1/,
  ],
  [
    'a coefficient above 1',
    set('ends/3/dischargeCoefficient', 1.2),
    'ends/3/dischargeCoefficient',
    /1\.2/,
    /at most 1/,
  ],

  ['no duration', set('duration', 0), 'duration', /^0$/, /above 0/],
  ['a Courant number above 1', set('courant', 1.5), 'courant', /1\.5/, /at most 1/],
  ['a Courant number of 0', set('courant', 0), 'courant', /^0$/, /above 0/],
  ['samples that run backward', set('sample', -1e-5), 'sample', /-0\.00001/, /from 0/],
  ['samples without end', set('sample', 1e-9), 'sample', /20000001 rows of 5 columns/, /at least .* or 0/],
  ['a probe on no pipe', set('probes/0/pipe', 'z'), 'probes/0/pipe', /"z"/, /one of "a", "b", "c"/],
  ['a probe outside', set('probes/0/x', 1.01), 'probes/0/x', /1\.01/, /from 0 to 1 m/],
  ['a probe before the start', set('probes/0/x', -0.1), 'probes/0/x', /-0\.1/, /from 0/],
  ['a probe twice', (r) => r.probes.push(r.probes[0]), 'probes/1', /probes\/0 again/, /once/],
  ['a profile that is a number', set('profile', 1), 'profile', /^1$/, /true or false/],
];

const extended: readonly Line[] = [
  [
    'a component that is not known',
    set('gas/components/1', 'brunt'),
    'gas/components/1',
    /"brunt"/,
    /did you mean "burnt"\?/,
  ],
  ['a component twice', set('gas/components/1', 'air'), 'gas/components/1', /"air" again/, /once/],
  ['no component', set('gas/components', []), 'gas/components', /\[\]/, /1 to 8/],
  [
    'a fraction of nothing known',
    set('ends/3/fractions', { fuel: 0.1 }),
    'ends/3/fractions/fuel',
    /not of the gas/,
    /"air", "burnt"/,
  ],
  ['a fraction below zero', set('ends/3/fractions/burnt', -0.1), 'ends/3/fractions/burnt', /-0\.1/, /from 0 to 1/],
  ['more than all', set('ends/3/fractions', { air: 0.5, burnt: 0.6 }), 'ends/3/fractions', /1\.1 in all/, /at most 1/],
  [
    'less than all',
    set('ends/3/fractions', { air: 0.5, burnt: 0.4 }),
    'ends/3/fractions',
    /0\.9 in all/,
    /no "air", which then makes up the rest/,
  ],
  ['hotter than the table goes', set('ends/3/temperature', 4500), 'ends/3/temperature', /4500/, /at most 4000 K/],
  [
    'colder than the table goes',
    set('ends/3/temperature', 0.001),
    'ends/3/temperature',
    /0\.001/,
    /at least 100 K.*gamma/,
  ],
  ['a wall colder than that', set('pipes/0/wallTemperature', 77), 'pipes/a/wallTemperature', /77/, /at least 100 K/],
  ['a correction below zero', set('ends/0/endCorrection', -1), 'ends/0/endCorrection', /-1/, /from 0 to 5 radii/],
  [
    'a correction of no name',
    set('ends/0/endCorrection', 'flange'),
    'ends/0/endCorrection',
    /"flange"/,
    /"unflanged", "flanged"/,
  ],
  ['a plate without area', set('ends/2/area', -1), 'ends/2/area', /-1/, /from 0/],
  [
    'a plate between three',
    (r) => {
      r.ends[2].at.push(['a', 'start']);
    },
    'ends/2/at',
    /a list of 3/,
    /two places/,
  ],
  [
    'angles and directions',
    (r) => {
      r.ends[4].angles = [0, 90];
    },
    'ends/4/directions',
    /angles and directions/,
    /one of the two/,
  ],
  [
    'too few directions',
    (r) => r.ends[4].directions.pop(),
    'ends/4/directions',
    /1 directions/,
    /each of the 2 places/,
  ],
  [
    'a direction of no length',
    set('ends/4/directions/0', [0, 0, 0]),
    'ends/4/directions/0',
    /\[0, 0, 0\]/,
    /some length/,
  ],
  [
    'a coefficient of no hole',
    drop('ends/0/area'),
    'ends/0/dischargeCoefficient',
    /0\.9 without a hole/,
    /an "area" beside it/,
  ],
];

const check = (base: () => Loose, [, spoil, path, found, allowed]: Line): void => {
  const rig = base();
  spoil(rig);
  const { problems, message } = refusal(JSON.stringify(rig));
  const named = problems.find((p) => p.path === path && found.test(p.found) && allowed.test(p.allowed));
  expect(named ?? problems).toBe(named);
  expect(message).not.toMatch(/\n|undefined|Invalid input/);
};

describe('the contract', () => {
  test.each(contract)('%s', (...line) => check(contractRig, line));
});
describe('beyond the contract', () => {
  test.each(extended)('%s', (...line) => check(extendedRig, line));
});

describe('text that is no rig', () => {
  test.each([
    ['nothing', '', /^line 1, column 1$/, /end of the file/],
    ['white space', ' \n ', /^line 2/, /end of the file/],
    ['a list', '[]', /^document$/, /\[\]/],
    ['a comment', `// rig\n${contractText}`, /^line 1, column 1$/, /"\/"/],
    ['cut short', contractText.slice(0, 300), /^line \d+/, /end of the file/],
    ['a field twice', contractText.replace('"courant"', '"duration"'), /^duration$/, /twice/],
    ['a number beyond all', contractText.replace('5e5', '5e500'), /^ends\/3\/pressure$/, /5e500/],
    ['a number that is none', contractText.replace('5e5', 'NaN'), /^line \d+/, /NaN/],
    ['far too long', ' '.repeat(9_000_000), /^document$/, /^at least 9000000 bytes/],
    ['too long by its bytes alone', `"${'€'.repeat(3_000_000)}"`, /^document$/, /^9000002 bytes/],
  ])('%s', (_, text, path, found) => {
    const { problems } = refusal(text);
    expect(problems[0]!.path).toMatch(path);
    expect(problems[0]!.found).toMatch(found);
  });
});

test('every refusal of a stage is told at once', () => {
  const rig = contractRig();
  rig.ambient.pressure = 0;
  rig.pipes[1].cells = 0;
  rig.courant = 2;
  expect(refusal(JSON.stringify(rig)).problems.map(({ path }) => path)).toEqual([
    'ambient/pressure',
    'pipes/b/cells',
    'courant',
  ]);
});
