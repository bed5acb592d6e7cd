/**
 * What leaves one end of a pipe into it, made of what comes to that end: by areas and speeds of sound, as linear acoustics have it. Of a joint
 * with one pressure and no room, p = Σ 2 Y in / ΣY and each pipe gets p less what it sent, Y = A c (volume flow that one pressure drives;
 * textbook, from memory); a mouth sends back as waveRoute.ts says. SI units.
 */
import type { GasPath, PipeEnd } from '../path/types';
import { pipeIn, reachOf, type WaveField } from './waveField';
import { type Passages, passagesOf } from './wavePassage';
import { machAt, type PathRun } from './wavePath';
import { areaAt, endOf, mouthBack, type StreamAt } from './waveRoute';
import { type Direction, type Stations, stationsOf } from './waveStation';
import { type Bore, boreOf } from './waveTapers';

export type Side = PipeEnd[1];

/** One wave that comes to the end, and the part of it that leaves into the pipe. */
export type Inflow = { readonly pipe: string; readonly direction: Direction; readonly part: number };

export type PipeSource =
  | { readonly kind: 'valve'; readonly cylinder: number }
  | { readonly kind: 'end'; readonly inflows: readonly Inflow[] };

/** Which way the wave runs that comes to this side. */
const toward = (side: Side): Direction => (side === 'finish' ? 1 : -1);

/** What a run's pipes are asked while waves are followed back, each made once. */
export type SourcePipes = {
  readonly stations: Stations;
  readonly passages: Passages;
  readonly stream: StreamAt;
  placeOf(pipe: string, side: Side): number;
  boreOf(pipe: string): Bore;
  sourceAt(pipe: string, side: Side): PipeSource;
};

export function pipesOf({ path, engine, answer }: PathRun, field: WaveField): SourcePipes {
  const stations = stationsOf(field, engine.air.pressure);
  const stream = once((pipe: string) => machAt(field, pipe));
  const bores = once((pipe: string) => boreOf(path, pipe));
  const reach = once((pipe: string) => reachOf(pipeIn(field, pipe)));
  const placeOf = (pipe: string, side: Side) => reach(pipe)[side === 'start' ? 0 : 1];
  const starts = once((pipe: string) => sourceOf(path, stations, placeOf, stream, [pipe, 'start']));
  const finishes = once((pipe: string) => sourceOf(path, stations, placeOf, stream, [pipe, 'finish']));
  return {
    ...{ stations, stream, placeOf, boreOf: bores },
    passages: passagesOf(field, answer.rpm),
    sourceAt: (pipe, side) => (side === 'start' ? starts : finishes)(pipe),
  };
}

function once<T>(make: (pipe: string) => T): (pipe: string) => T {
  const made = new Map<string, T>();
  return (pipe) => {
    if (!made.has(pipe)) made.set(pipe, make(pipe));
    return made.get(pipe)!;
  };
}

function sourceOf(
  path: GasPath,
  stations: Stations,
  placeOf: SourcePipes['placeOf'],
  stream: StreamAt,
  [pipe, side]: PipeEnd,
): PipeSource {
  const valve = side === 'start' && path.valves.find((place) => place.pipe === pipe);
  if (valve) return { kind: 'valve', cylinder: valve.cylinder };
  const end = endOf(path, [pipe, side]);
  const echo = (part: number): PipeSource => ({ kind: 'end', inflows: [{ pipe, direction: toward(side), part }] });
  if (end.kind === 'open') return echo(mouthBack(path, pipe, end, stream));
  if (end.kind === 'closed') return echo(1);
  if (end.kind === 'through') return { kind: 'end', inflows: [] };
  const yields = end.at.map((at) => areaAt(path, at) * stations(at[0], placeOf(...at)).sound);
  const all = yields.reduce((sum, one) => sum + one, 0);
  return {
    kind: 'end',
    inflows: end.at.map(([id, at], k) => ({
      pipe: id,
      direction: toward(at),
      part: (2 * yields[k]!) / all - (id === pipe && at === side ? 1 : 0),
    })),
  };
}
