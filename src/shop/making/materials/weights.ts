/** What the made parts weigh and where their middle lies: volume of the true surfaces × density. mm, kg, the design's frame. */
import { DEFAULT_MATERIAL, fromFrame, type HeaderPart, meshCentroid, partFrame } from '../../../../geometry';
import { materialOf } from '../../../../shared/stock/materials';
import type { Vec3 } from '../../../../shared/vec3';
import type { Making } from '../report';

const MM3_PER_M3 = 1e9;

/** Null where its material's density is not known: nothing is better than a guess. */
export function partMass({
  material = DEFAULT_MATERIAL,
  volume,
}: Pick<HeaderPart, 'material' | 'volume'>): number | null {
  const known = materialOf(material);
  return known ? (volume / MM3_PER_M3) * known.density : null;
}

/** Of all parts together; those whose density is not known are named and count nothing. Fasteners and gaskets are no parts. */
export function massOfParts(parts: readonly HeaderPart[]): Making['mass'] {
  let total = 0;
  let moment: Vec3 = [0, 0, 0];
  const unknown: string[] = [];
  for (const part of parts) {
    const mass = partMass(part);
    if (mass === null) {
      unknown.push(part.id);
      continue;
    }
    const [x, y, z] = fromFrame(partFrame(part.pose), meshCentroid(part.mesh));
    total += mass;
    moment = [moment[0] + mass * x, moment[1] + mass * y, moment[2] + mass * z];
  }
  const centre: Vec3 = total > 0 ? [moment[0] / total, moment[1] / total, moment[2] / total] : [0, 0, 0];
  return { total, centre, unknown };
}
