/** Collectors as far from their ports as the lengths asked for want them: too near, and long runners find no room to wind. mm. */
import type { BankForm, CollectorForm } from '../../../shared/engine/form';
import type { Vec3 } from '../../../shared/vec3';

/** Straight distance over tube length: what leaves runners three bends and room beside each other. Found by trying. */
const REACH = 0.68;

/** @param tube length of tube from flange to collector; null: any, so the usual place is as good as another */
export function hungFor(collectors: readonly CollectorForm[], banks: readonly BankForm[], tube: number | null) {
  if (tube === null) return collectors;
  return collectors.map((collector): CollectorForm => {
    const ports = banks.flatMap(({ cylinders, firstPort: [x, y, z], pitch }) =>
      cylinders.flatMap((c, i): Vec3[] => (collector.cylinders.includes(c) ? [[x + i * pitch, y, z]] : [])),
    );
    const middle = ([0, 1, 2] as const).map((k) => ports.reduce((sum, p) => sum + p[k], 0) / ports.length);
    const away = collector.position.map((x, k) => x - middle[k]!);
    const stretch = (REACH * tube) / Math.hypot(...away);
    const position = away.map((x, k) => Math.round(middle[k]! + stretch * x)) as unknown as Vec3;
    return { ...collector, position };
  });
}
