/** How whole a surface is: edges that only one triangle has, and those that more than two have. Corners are one where they are equal to the bit. */
import { Numbering, type TriangleSoup } from '../../../geometry';

/** Beyond it the counting takes longer than the reading. */
export const MOST_COUNTED = 600_000;

export type EdgeCounts = { readonly openEdges: number | null; readonly sharedEdges: number | null };

export function edgesOf(soup: TriangleSoup): EdgeCounts {
  if (soup.length / 9 > MOST_COUNTED) return { openEdges: null, sharedEdges: null };
  const vertices = new Numbering();
  const edges = new Numbering();
  const bits = new Int32Array(1);
  const single = new Float32Array(bits.buffer);
  const bitsOf = (x: number): number => {
    // Both zeros are one place.
    single[0] = x === 0 ? 0 : x;
    return bits[0]!;
  };
  const users = new Uint8Array(soup.length / 3);
  const own = [0, 0, 0];
  for (let o = 0; o < soup.length; o += 9) {
    for (let k = 0; k < 3; k++)
      own[k] = vertices.of(bitsOf(soup[o + 3 * k]!), bitsOf(soup[o + 3 * k + 1]!), bitsOf(soup[o + 3 * k + 2]!));
    for (let k = 0; k < 3; k++) {
      const [a, b] = [own[k]!, own[(k + 1) % 3]!];
      const edge = edges.of(Math.min(a, b), Math.max(a, b), 0);
      users[edge] = Math.min(3, users[edge]! + 1);
    }
  }
  let [openEdges, sharedEdges] = [0, 0];
  for (let e = 0; e < edges.count; e++) {
    if (users[e] === 1) openEdges++;
    else if (users[e] === 3) sharedEdges++;
  }
  return { openEdges, sharedEdges };
}
