/**
 * A grey picture, row by row from its top left, 0 black to 255 white; and the level between its dark and its light. A
 * pixel's value holds at its middle, (i + 0.5, j + 0.5) px from the corner.
 */

export type Raster = { readonly width: number; readonly height: number; readonly data: Uint8Array | Uint8ClampedArray };

/** Why a picture cannot be traced: a clause that follows the file's name, with what would mend it. */
export class TraceError extends Error {
  override readonly name = 'TraceError';
}

/**
 * Otsu's split of the levels into two classes (IEEE Trans. SMC 9, 1979, 62–66), then half-way between what is usual in each:
 * an edge that a pixel lies across half-way has just that level, so contours at it are not drawn to either side.
 */
export function usualThreshold({ data }: Raster): number {
  const counts = new Float64Array(256);
  for (const value of data) counts[value]!++;
  const split = otsu(counts, data.length);
  return (median(counts, 0, split) + median(counts, split + 1, 255)) / 2;
}

/** The last level of the dark class. */
function otsu(counts: Float64Array, total: number): number {
  let sum = 0;
  for (let level = 0; level < 256; level++) sum += level * counts[level]!;
  let [below, sumBelow, best, split] = [0, 0, -1, 127];
  for (let level = 0; level < 255; level++) {
    below += counts[level]!;
    sumBelow += level * counts[level]!;
    if (below === 0 || below === total) continue;
    const apart = sumBelow / below - (sum - sumBelow) / (total - below);
    const between = below * (total - below) * apart * apart;
    if (between > best) [best, split] = [between, level];
  }
  if (best <= 0)
    throw new TraceError('it is one even shade: nothing to trace; scan the gasket on paper of another shade');
  return split;
}

function median(counts: Float64Array, from: number, to: number): number {
  let all = 0;
  for (let level = from; level <= to; level++) all += counts[level]!;
  let seen = 0;
  for (let level = from; level <= to; level++) {
    seen += counts[level]!;
    if (seen >= all / 2) return level;
  }
  return to;
}
