/** Triangles without area left out: their neighbours have their edges. */
import type { TriangleSoup } from '../../../geometry';
import { MeshError } from './meshError';

/** Height over longest edge; what single precision makes of three corners on a line. */
const FLAT = 1e-9;

/** @returns the very same soup where there are none. @throws MeshError for a corner that is not finite */
export function withoutEmpty(soup: TriangleSoup): { readonly soup: TriangleSoup; readonly dropped: number } {
  const kept = new Uint8Array(soup.length / 9);
  let count = 0;
  for (let t = 0, o = 0; t < kept.length; t++, o += 9) {
    const [ux, uy, uz] = [soup[o + 3]! - soup[o]!, soup[o + 4]! - soup[o + 1]!, soup[o + 5]! - soup[o + 2]!];
    const [vx, vy, vz] = [soup[o + 6]! - soup[o]!, soup[o + 7]! - soup[o + 1]!, soup[o + 8]! - soup[o + 2]!];
    const [x, y, z] = [uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx];
    const long = Math.max(ux * ux + uy * uy + uz * uz, vx * vx + vy * vy + vz * vz);
    if (!Number.isFinite(long))
      throw new MeshError(
        `triangle ${t + 1} of ${kept.length} has a corner that is not a finite number; export it again`,
      );
    if (!(Math.sqrt(x * x + y * y + z * z) > FLAT * long)) continue;
    kept[t] = 1;
    count++;
  }
  if (count === kept.length) return { soup, dropped: 0 };
  const left = new Float32Array(9 * count);
  for (let t = 0, o = 0; t < kept.length; t++) {
    if (!kept[t]) continue;
    for (let k = 0; k < 9; k++) left[o++] = soup[9 * t + k]!;
  }
  return { soup: left, dropped: kept.length - count };
}
