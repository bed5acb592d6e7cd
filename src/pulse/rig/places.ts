/** Which planes an end of a rig lies on: the start of pipe k is plane 2k, its finish 2k + 1. */
import type { PipeEnd, RigEnd } from './types';

/** One place, or several. */
export const placesOf = ({ at }: Pick<RigEnd, 'at'>): readonly PipeEnd[] =>
  (typeof at[0] === 'string' ? [at] : at) as readonly PipeEnd[];

export const planesOf = ({ pipes }: { readonly pipes: readonly { readonly id: string }[] }, end: RigEnd): number[] =>
  placesOf(end).map(([pipe, side]) => 2 * pipes.findIndex(({ id }) => id === pipe) + (side === 'start' ? 0 : 1));
