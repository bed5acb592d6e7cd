/** Where the pipes of a way lie on screen: end to end from the valve at the left to the open air at the right, one scale for all. px */
import { reachOf } from '../../../pulse/forecast/waveField';
import type { PipePicture } from '../../../pulse/report';

export type WayPanel = {
  readonly pipe: string;
  readonly left: number;
  readonly width: number;
  /** m, from the first cell's outer face to the last one's. */
  readonly from: number;
  readonly to: number;
};

/** A pipe shorter than this on screen could not be seen; the others give way. */
const LEAST = 12;
/** Before a pipe that is not of the way but stands beside it. */
export const ASIDE = 18;

/** @param beside how many of the last pipes stand beside the way */
export function planWay(
  pipes: readonly Pick<PipePicture, 'pipe' | 'x'>[],
  left: number,
  room: number,
  beside = 0,
): WayPanel[] {
  const reaches = pipes.map(reachOf);
  const lengths = reaches.map(([from, to]) => to - from);
  const space = room - beside * ASIDE;
  const whole = lengths.reduce((sum, length) => sum + length, 0);
  const wished = lengths.map((length) => Math.max(LEAST, (space * length) / whole));
  const given = wished.reduce((sum, width) => sum + width, 0);
  let at = left;
  return pipes.map(({ pipe }, k) => {
    if (k >= pipes.length - beside) at += ASIDE;
    const width = (wished[k]! * space) / given;
    const panel = { pipe, left: at, width, from: reaches[k]![0], to: reaches[k]![1] };
    at += width;
    return panel;
  });
}

export const wayX = ({ left, width, from, to }: WayPanel, x: number): number =>
  left + (width * (x - from)) / (to - from);

/** The pipe under or nearest to a place on screen, and where in it, m. */
export function placeAt(panels: readonly WayPanel[], px: number): { readonly panel: number; readonly x: number } {
  let [panel, best] = [0, Infinity];
  panels.forEach(({ left, width }, k) => {
    const off = Math.max(left - px, px - left - width, 0);
    if (off < best) [panel, best] = [k, off];
  });
  const { left, width, from, to } = panels[panel]!;
  return { panel, x: from + Math.min(1, Math.max(0, (px - left) / width)) * (to - from) };
}
