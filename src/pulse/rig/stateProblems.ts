/**
 * Which states of a rig are absurd. Judged against each other and against the gas, so that a dimensionless rig is as good as one in SI;
 * only where the gas constant is that of a real gas does a temperature in K mean something by itself.
 */
import { describe, oneOf, type Refusal } from '../../../shared/design/refusal';
import * as limits from './limits';
import { didYouMean } from './nearest';
import { rigPath } from './paths';
import type { ShapedRig } from './shape';

type State = {
  readonly path: string;
  readonly pressure: number;
  readonly temperature: number;
  readonly velocity?: number;
  readonly fractions?: Readonly<Record<string, number>>;
};

/** @param known names of the substances that a mixture can have */
export function stateProblems(rig: ShapedRig, known: readonly string[]): Refusal[] {
  const states = statesOf(rig);
  const components = componentProblems(rig, known);
  return [
    ...components,
    // Of components that are not known no fraction can be judged.
    ...(components.length > 0 ? [] : states.flatMap((state) => fractionProblems(rig, state))),
    ...heatProblems(rig, states),
    ...speedProblems(rig, states),
    ...pressureProblems(states),
  ];
}

function statesOf(rig: ShapedRig): State[] {
  const initial = rig.pipes.flatMap((pipe, i) =>
    pipe.initial.map((state, k) => ({ ...state, path: rigPath(rig, ['pipes', i, 'initial', k]) })),
  );
  const vessels = rig.ends.flatMap((end, i) => (end.kind === 'vessel' ? [{ ...end, path: `ends/${i}` }] : []));
  return [{ ...rig.ambient, path: 'ambient' }, ...initial, ...vessels];
}

function componentProblems({ gas }: ShapedRig, known: readonly string[]): Refusal[] {
  if (!('components' in gas)) return [];
  return gas.components.flatMap((name, i): Refusal[] => {
    const path = `gas/components/${i}`;
    if (!known.includes(name)) {
      return [{ path, found: describe(name), allowed: `${oneOf(known)}${didYouMean(name, known)}` }];
    }
    if (gas.components.indexOf(name) < i)
      return [{ path, found: `${describe(name)} again`, allowed: 'each component once' }];
    return [];
  });
}

function fractionProblems({ gas }: ShapedRig, { path, fractions }: State): Refusal[] {
  if (!fractions) return [];
  const at = `${path}/fractions`;
  if (!('components' in gas)) {
    const allowed = 'none, as the gas is one: for several, give "gas": { "components": [ … ] }';
    return Object.keys(fractions).length > 0 ? [{ path: at, found: 'fractions', allowed }] : [];
  }
  const { components } = gas;
  const problems: Refusal[] = [];
  for (const name of Object.keys(fractions)) {
    if (components.includes(name)) continue;
    const allowed = `${oneOf(components)}, the components of the gas${didYouMean(name, components)}`;
    problems.push({
      path: `${at}/${describe(name).slice(1, -1)}`,
      found: 'a component that is not of the gas',
      allowed,
    });
  }
  const sum = Object.values(fractions).reduce((a, b) => a + b, 0);
  const first = components[0]!;
  if (sum > 1 + limits.SAME) problems.push({ path: at, found: `${sum} in all`, allowed: 'at most 1 in all' });
  else if (Object.hasOwn(fractions, first) && sum < 1 - limits.SAME) {
    const allowed = `1 in all, or no "${first}", which then makes up the rest`;
    problems.push({ path: at, found: `${sum} in all`, allowed });
  }
  return problems;
}

function heatProblems({ gas, pipes }: ShapedRig, states: readonly State[]): Refusal[] {
  const most =
    'components' in gas
      ? limits.HOTTEST_MIXTURE
      : gas.gasConstant >= limits.REAL_GAS_CONSTANT
        ? limits.HOTTEST
        : limits.TEMPERATURE.most;
  const least = 'components' in gas ? limits.COLDEST_MIXTURE : 0;
  const walls = pipes.flatMap(({ id, wallTemperature }) =>
    wallTemperature == null ? [] : [{ path: `pipes/${id}/wallTemperature`, temperature: wallTemperature }],
  );
  const all = [...states.map((s) => ({ path: `${s.path}/temperature`, temperature: s.temperature })), ...walls];
  return all.flatMap(({ path, temperature }): Refusal[] => {
    const found = String(temperature);
    if (temperature > most) return [{ path, found, allowed: `at most ${most} K` }];
    if (temperature >= least) return [];
    const allowed = `at least ${least} K in a mixture; for colder gas give "gas": { "gamma": …, "gasConstant": … }`;
    return [{ path, found, allowed }];
  });
}

/** m/s: of the fastest sound there is in the rig. A mixture's is not asked for here: air's will do. */
export function fastestSound({ gas }: ShapedRig, temperatures: readonly number[]): number {
  const [gamma, gasConstant] = 'components' in gas ? [1.4, 287] : [gas.gamma, gas.gasConstant];
  return Math.sqrt(gamma * gasConstant * Math.max(...temperatures));
}

function speedProblems(rig: ShapedRig, states: readonly State[]): Refusal[] {
  const sound = fastestSound(
    rig,
    states.map(({ temperature }) => temperature),
  );
  const most = limits.MOST_MACH * sound;
  return states
    .filter(({ velocity = 0 }) => Math.abs(velocity) > most)
    .map(({ path, velocity }) => ({
      path: `${path}/velocity`,
      found: String(velocity),
      allowed: `at most ${most.toPrecision(3)} m/s either way, ${limits.MOST_MACH} times the fastest sound of the rig`,
    }));
}

function pressureProblems(states: readonly State[]): Refusal[] {
  const highest = Math.max(...states.map(({ pressure }) => pressure));
  const least = highest * limits.LEAST_RATIO;
  return states
    .filter(({ pressure }) => pressure < least)
    .map(({ path, pressure }) => ({
      path: `${path}/pressure`,
      found: String(pressure),
      allowed: `at least ${least.toPrecision(3)} Pa, beside the rig's highest of ${highest}: there is no empty space here`,
    }));
}
