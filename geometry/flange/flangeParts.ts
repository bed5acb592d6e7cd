/** Every flange's plates as parts, and what cannot be made of them. */
import { meshProblems } from '../check/mesh';
import { DEFAULT_MATERIAL, type Header } from '../header/resolve';
import type { HeaderPart, Made, PartRemark } from '../parts/part';
import { flangePlan } from './plan';
import { plateSolid, plateVolume } from './plateSolid';

export function flangeParts(header: Header): Made {
  const parts: HeaderPart[] = [];
  const notMade: PartRemark[] = [];
  const warnings: PartRemark[] = [];
  for (const flange of header.design.flanges ?? []) {
    const plan = flangePlan(header, flange);
    notMade.push(...plan.notMade);
    warnings.push(...plan.warnings);
    for (const [k, plate] of plan.plates.entries()) {
      const { mesh, edges } = plateSolid(plate);
      const faults = meshProblems(mesh);
      if (faults.length > 0) {
        const message = `As a solid ${faults.join(', ')}. Its drawing is as designed; simplify its outline to have it solid too.`;
        notMade.push({ part: plate.id, where: `flanges/${flange.id}`, message });
        continue;
      }
      parts.push({
        id: plate.id,
        kind: 'flange',
        name: plan.plates.length === 1 ? 'plate' : `plate ${k + 1}`,
        of: { kind: 'flange', id: flange.id },
        mesh,
        pose: plate.pose,
        volume: plateVolume(plate),
        material: flange.material ?? DEFAULT_MATERIAL,
        edges,
      });
    }
  }
  return { parts, notMade, warnings };
}
