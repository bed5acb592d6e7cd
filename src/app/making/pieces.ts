/** Where pieces lie along their runner, and what of it the picture and the rack know them by. mm along the centerline. No React. */
import type { Header } from '../../../geometry';
import type { BentTube, Making, WeldedTube } from '../../shop/making/report';
import { unrolled } from '../derived';
import type { Ref } from '../session';

/** Of a runner's centerline, mm from its start. */
export type Stretch = { readonly runner: string; readonly piece: string; readonly from: number; readonly to: number };

/** The tube may begin before its centerline or after it: the joints say where it counts from. */
export function stretchesOf({ runner, pieces, joints }: WeldedTube, length: number): readonly Stretch[] {
  const ends = pieces.map((_, i) => joints.find(({ after }) => after === i)?.station ?? length);
  return pieces.map(({ id }, i) => ({ runner, piece: id, from: i === 0 ? 0 : ends[i - 1]!, to: ends[i]! }));
}

/** The bend, else the straight, that the middle of a stretch lies on. */
export function refOfStretch(header: Header, { runner, from, to }: Stretch): Ref {
  const resolved = header.runners.find((r) => r.runner.id === runner);
  if (!resolved) return { kind: 'runner', id: runner };
  const strip = unrolled(resolved);
  const [low, high] = [from + resolved.lengthInHead, to + resolved.lengthInHead];
  // A piece has one bend at most: the one that most of lies in it.
  const share = (p: { from: number; to: number }) => Math.min(p.to, high) - Math.max(p.from, low);
  const bends = strip.pieces.filter((p) => p.kind === 'bend' && share(p) > 1e-6);
  const [bend] = [...bends].sort((a, b) => share(b) - share(a));
  if (bend?.kind === 'bend') return { kind: 'runner', id: runner, bend: bend.index };
  const middle = (low + high) / 2;
  const straight = strip.pieces.find((p) => p.kind === 'straight' && p.from <= middle && middle <= p.to);
  return straight?.kind === 'straight'
    ? { kind: 'runner', id: runner, straight: straight.index }
    : { kind: 'runner', id: runner };
}

export const bentOf = ({ bent }: Making, runner: string): readonly BentTube[] =>
  bent.filter((tube) => tube.runner === runner);
