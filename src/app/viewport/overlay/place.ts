/**
 * Where labels go so that none lies on another: each tries its candidate places in turn, the more important first, and
 * stays away where all are taken. Pixels, y downward.
 */

export type LabelBox = {
  readonly width: number;
  readonly height: number;
  /** Centres to try, best first; null: not in the picture. */
  readonly candidates: readonly (readonly [x: number, y: number] | null)[];
  /** Shown even where it must cover others. */
  readonly must?: boolean;
};

const AIR = 3;
const EDGE = 2;

export type Taken = { readonly l: number; readonly r: number; readonly t: number; readonly b: number };

/**
 * @param labels the most important first
 * @param blocked where something else already lies: left, right, top, bottom
 * @returns a centre for each, or null
 */
export function placeLabels(
  labels: readonly LabelBox[],
  size: { readonly width: number; readonly height: number },
  blocked: readonly Taken[] = [],
): (readonly [x: number, y: number] | null)[] {
  const taken = [...blocked];
  return labels.map(({ width, height, candidates, must }) => {
    const [w, h] = [width / 2, height / 2];
    const inside = candidates.filter(
      (c) => c && c[0] - w > EDGE && c[0] + w < size.width - EDGE && c[1] - h > EDGE && c[1] + h < size.height - EDGE,
    );
    const free = inside.find((c) => {
      const [x, y] = c!;
      return taken.every((o) => x + w + AIR < o.l || x - w - AIR > o.r || y + h + AIR < o.t || y - h - AIR > o.b);
    });
    const chosen = free ?? (must ? (inside[0] ?? null) : null);
    if (chosen) taken.push({ l: chosen[0] - w, r: chosen[0] + w, t: chosen[1] - h, b: chosen[1] + h });
    return chosen;
  });
}
