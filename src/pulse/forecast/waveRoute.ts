/**
 * The way from a cylinder's exhaust valves to the open air, pipe by pipe, and what a small pressure wave meets at the end of each: which
 * way it is sent back and how much of it. By areas alone, as linear acoustics have it for one gas at rest:
 * r = (A − ΣA others) / (A + ΣA others), so a larger area sends pressure back as suction (textbook; from memory). A plate with a
 * hole over a mouth loses Δp = K ρu²/2, to small waves a resistance of K M times the pipe's ρc: r = (KM − 1) / (KM + 1)
 * (quasi-steady linear acoustics; from memory). A strong pulse streams faster and meets more of it than M, a mean, tells. SI units.
 */
import type { GasPath, PathEnd, PathPipe, PipeEnd } from '../path/types';
import type { OpenEnd } from '../rig/types';

export type TurnKind = 'junction' | 'restriction' | 'mouth' | 'closed' | 'through';

/** The downstream end of one pipe of the way. */
export type Turn = {
  readonly pipe: string;
  readonly kind: TurnKind;
  /** Of the pipe beyond; null where there is none. */
  readonly onward: string | null;
  /** Part of the pressure wave that comes back, −1 to 1, and that goes on. */
  readonly back: number;
  readonly on: number;
  /** Of a wave that comes from beyond: the part that goes into this pipe. */
  readonly up: number;
  /** Whether a mouth has a plate with a hole over it: a silencer. */
  readonly plate?: boolean;
};

export type WaveRoute = { readonly cylinder: number; readonly turns: readonly Turn[] };

/** Mean Mach number at the finish of a pipe, without sign. */
export type StreamAt = (pipe: string) => number;

/** @param stream tells what plates send back; gas at rest passes them as if they were not there @throws where the path has no valve of this cylinder */
export function routeOf(path: GasPath, cylinder: number, stream: StreamAt = () => 0): WaveRoute {
  const valve = path.valves.find((place) => place.cylinder === cylinder);
  if (!valve) throw new Error(`the gas path has no exhaust valve of cylinder ${cylinder}`);
  const turns: Turn[] = [];
  const passed = new Set<string>();
  for (let pipe: string | null = valve.pipe; pipe !== null && !passed.has(pipe); ) {
    passed.add(pipe);
    const turn = turnOf(path, pipe, stream);
    turns.push(turn);
    pipe = turn.onward;
  }
  return { cylinder, turns };
}

/** @throws where the path lacks it */
export const pipeOf = ({ pipes }: GasPath, id: string): PathPipe => {
  const pipe = pipes.find((one) => one.id === id);
  if (!pipe) throw new Error(`the gas path has no pipe "${id}"`);
  return pipe;
};

/** m² */
export function areaAt(path: GasPath, [id, side]: PipeEnd): number {
  const { diameter } = pipeOf(path, id);
  const [, d] = (side === 'start' ? diameter[0] : diameter.at(-1))!;
  return (Math.PI / 4) * d * d;
}

/** What is there. @throws where the path says nothing of it */
export function endOf(path: GasPath, [pipe, side]: PipeEnd): PathEnd {
  const isThere = ([id, at]: PipeEnd): boolean => id === pipe && at === side;
  const end = path.ends.find((one) =>
    one.kind === 'junction' || one.kind === 'restriction' ? one.at.some(isThere) : isThere(one.at),
  );
  if (!end) throw new Error(`the gas path says nothing of the ${side} of pipe "${pipe}"`);
  return end;
}

/** Part of a pressure wave that a mouth sends back. */
export function mouthBack(path: GasPath, pipe: string, end: OpenEnd, stream: StreamAt): number {
  const resistance = resistanceOf(path, pipe, end, stream);
  return (resistance - 1) / (resistance + 1);
}

function turnOf(path: GasPath, pipe: string, stream: StreamAt): Turn {
  const end = endOf(path, [pipe, 'finish']);
  switch (end.kind) {
    case 'junction':
    case 'restriction':
      return jointTurn(path, pipe, end.kind, end.at);
    case 'open': {
      const back = mouthBack(path, pipe, end, stream);
      return { pipe, kind: 'mouth', onward: null, back, on: 0, up: 0, plate: end.area !== undefined };
    }
    case 'closed':
      return { pipe, kind: 'closed', onward: null, back: 1, on: 0, up: 0 };
    default:
      return { pipe, kind: 'through', onward: null, back: 0, on: 1, up: 0 };
  }
}

/** What leads on first: a branch is taken only where nothing else goes on. */
const ONWARD = ['shared', 'secondary', 'collector', 'tailpipe', 'primary', 'branch'];

/** K M of a hole that loses K = (A / Aeff)² − 1 dynamic pressures of the pipe: as path/tailpipe.ts makes it of a silencer's K. */
function resistanceOf(path: GasPath, pipe: string, { area, dischargeCoefficient = 1 }: OpenEnd, stream: StreamAt) {
  if (area === undefined) return 0;
  const own = areaAt(path, [pipe, 'finish']);
  const hole = typeof area === 'number' ? area : (area[0]?.[1] ?? own);
  return Math.max(0, (own / Math.max(hole * dischargeCoefficient, 1e-3 * own)) ** 2 - 1) * stream(pipe);
}

function jointTurn(path: GasPath, pipe: string, kind: 'junction' | 'restriction', at: readonly PipeEnd[]): Turn {
  const own = areaAt(path, [pipe, 'finish']);
  const all = at.reduce((sum, end) => sum + areaAt(path, end), 0);
  const rank = (id: string) => ONWARD.indexOf(pipeOf(path, id).role);
  const [next] = at
    .filter(([id, side]) => side === 'start' && id !== pipe)
    .sort((a, b) => rank(a[0]) - rank(b[0]) || areaAt(path, b) - areaAt(path, a));
  return {
    pipe,
    kind,
    onward: next?.[0] ?? null,
    back: (2 * own) / all - 1,
    on: (2 * own) / all,
    up: next ? (2 * areaAt(path, next)) / all : 0,
  };
}
