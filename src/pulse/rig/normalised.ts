/** A rig that holds, with everything filled in that may be left out, its tables from exactly 0 to exactly the length. */
import type { ShapedEnd, ShapedPipe, ShapedRig } from './shape';
import type { Fractions, InitialState, Rig, RigEnd, RigPipe } from './types';

export const DEFAULTS = {
  friction: 0,
  wallTemperature: null,
  velocity: 0,
  model: 'equal-pressure',
  dischargeCoefficient: 1,
  courant: 0.8,
  sample: 0,
  profile: false,
} as const;

export function normalised(rig: ShapedRig): Rig {
  const { gas } = rig;
  const rest = 'components' in gas ? gas.components[0]! : null;
  return {
    format: 'evenrun-rig',
    version: 1,
    gas: 'components' in gas ? { components: gas.components } : { gamma: gas.gamma, gasConstant: gas.gasConstant },
    ambient: {
      pressure: rig.ambient.pressure,
      temperature: rig.ambient.temperature,
      ...carried(rig.ambient.fractions, rest),
    },
    pipes: rig.pipes.map((pipe) => pipeOf(pipe, rest)),
    ends: rig.ends.map((end) => endOf(end, rest)),
    duration: rig.duration,
    courant: rig.courant ?? DEFAULTS.courant,
    probes: (rig.probes ?? []).map(({ pipe, x }) => ({ pipe, x })),
    sample: rig.sample ?? DEFAULTS.sample,
    profile: rig.profile ?? DEFAULTS.profile,
  };
}

/** Without the first component, which makes up the rest. */
function carried(fractions: Fractions | undefined, rest: string | null): { fractions?: Fractions } {
  if (!fractions || rest === null) return {};
  return { fractions: Object.fromEntries(Object.entries(fractions).filter(([name]) => name !== rest)) };
}

function pipeOf(pipe: ShapedPipe, rest: string | null): RigPipe {
  const { id, length, cells, diameter, friction = DEFAULTS.friction } = pipe;
  const last = diameter.length - 1;
  return {
    id,
    length,
    cells,
    diameter: diameter.map(([x, d], i) => [i === 0 ? 0 : i === last ? length : x, d] as const),
    friction: typeof friction === 'number' ? friction : { roughness: friction.roughness },
    wallTemperature: pipe.wallTemperature ?? DEFAULTS.wallTemperature,
    initial: stretches(pipe, rest),
  };
}

/** In the order of the pipe, each from exactly where the one before ends. */
function stretches({ initial, length }: ShapedPipe, rest: string | null): InitialState[] {
  const sorted = initial.toSorted((a, b) => a.from - b.from);
  return sorted.map(({ to, pressure, temperature, velocity = DEFAULTS.velocity, fractions }, i) => ({
    from: i === 0 ? 0 : sorted[i - 1]!.to,
    to: i === sorted.length - 1 ? length : to,
    ...{ pressure, temperature, velocity },
    ...carried(fractions, rest),
  }));
}

function endOf(end: ShapedEnd, rest: string | null): RigEnd {
  const { title: _t, about: _a, note: _n, source: _s, name: _m, description: _d, comment: _c, ...plain } = end;
  switch (plain.kind) {
    case 'junction':
      return { ...plain, model: plain.model ?? DEFAULTS.model };
    case 'restriction':
      return { ...plain, dischargeCoefficient: plain.dischargeCoefficient ?? DEFAULTS.dischargeCoefficient };
    case 'vessel': {
      const { fractions, ...vessel } = plain;
      const dischargeCoefficient = plain.dischargeCoefficient ?? DEFAULTS.dischargeCoefficient;
      return { ...vessel, dischargeCoefficient, ...carried(fractions, rest) };
    }
    default:
      return plain;
  }
}
