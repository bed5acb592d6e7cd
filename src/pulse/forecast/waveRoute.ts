/**
 * The way from a cylinder's exhaust valves to the open air, pipe by pipe, and what a small pressure wave meets at the end of each: which
 * way it is sent back and how much of it. By areas alone, as linear acoustics have it for one gas at rest:
 * r = (A − ΣA others) / (A + ΣA others), so a larger area sends pressure back as suction (textbook; from memory). SI units.
 */
import type { GasPath, PathPipe, PipeEnd } from '../path/types';

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
};

export type WaveRoute = { readonly cylinder: number; readonly turns: readonly Turn[] };

/** @throws where the path has no valve of this cylinder */
export function routeOf(path: GasPath, cylinder: number): WaveRoute {
  const valve = path.valves.find((place) => place.cylinder === cylinder);
  if (!valve) throw new Error(`the gas path has no exhaust valve of cylinder ${cylinder}`);
  const turns: Turn[] = [];
  const passed = new Set<string>();
  for (let pipe: string | null = valve.pipe; pipe !== null && !passed.has(pipe); ) {
    passed.add(pipe);
    const turn = turnOf(path, pipe);
    turns.push(turn);
    pipe = turn.onward;
  }
  return { cylinder, turns };
}

const pipeOf = ({ pipes }: GasPath, id: string): PathPipe => {
  const pipe = pipes.find((one) => one.id === id);
  if (!pipe) throw new Error(`the gas path has no pipe "${id}"`);
  return pipe;
};

function areaOf(path: GasPath, [id, side]: PipeEnd): number {
  const { diameter } = pipeOf(path, id);
  const [, d] = (side === 'start' ? diameter[0] : diameter.at(-1))!;
  return (Math.PI / 4) * d * d;
}

const isAt = ([id, side]: PipeEnd, pipe: string): boolean => id === pipe && side === 'finish';

function turnOf(path: GasPath, pipe: string): Turn {
  for (const end of path.ends) {
    if (end.kind === 'junction' || end.kind === 'restriction') {
      if (end.at.some((at) => isAt(at, pipe))) return jointTurn(path, pipe, end.kind, end.at);
    } else if (isAt(end.at, pipe)) {
      if (end.kind === 'open') return { pipe, kind: 'mouth', onward: null, back: -1, on: 0, up: 0 };
      if (end.kind === 'closed') return { pipe, kind: 'closed', onward: null, back: 1, on: 0, up: 0 };
      return { pipe, kind: 'through', onward: null, back: 0, on: 1, up: 0 };
    }
  }
  throw new Error(`the gas path says nothing of the finish of pipe "${pipe}"`);
}

/** What leads on first: a branch is taken only where nothing else goes on. */
const ONWARD = ['shared', 'secondary', 'collector', 'tailpipe', 'primary', 'branch'];

function jointTurn(path: GasPath, pipe: string, kind: 'junction' | 'restriction', at: readonly PipeEnd[]): Turn {
  const own = areaOf(path, [pipe, 'finish']);
  const all = at.reduce((sum, end) => sum + areaOf(path, end), 0);
  const rank = (id: string) => ONWARD.indexOf(pipeOf(path, id).role);
  const [next] = at
    .filter(([id, side]) => side === 'start' && id !== pipe)
    .sort((a, b) => rank(a[0]) - rank(b[0]) || areaOf(path, b) - areaOf(path, a));
  return {
    pipe,
    kind,
    onward: next?.[0] ?? null,
    back: (2 * own) / all - 1,
    on: (2 * own) / all,
    up: next ? (2 * areaOf(path, next)) / all : 0,
  };
}
