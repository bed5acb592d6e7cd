/** Collectors as far from their ports as the lengths asked for want them: too near, and long runners find no room to wind. mm. */
import type { BankForm, CollectorForm } from '../../../shared/engine/form';
import type { Vec3 } from '../../../shared/vec3';

/**
 * Straight distance over tube length that leaves runners their bends and room beside each other: all into one, and with a
 * first join, whose own body is on the way too. Found by trying.
 */
const REACH = { straight: 0.68, joined: 0.88 };
/** Where only one of the two lengths was asked for, mm: about what the other is with a common four. */
const FIRST_TUBE = 340;
const SECOND_TUBE = 450;

/** What was asked of the lengths of tube, mm; null: any. */
export type AskedLengths = { readonly first: number | null; readonly second: number | null; readonly joined: boolean };

export function hungFor(
  collectors: readonly CollectorForm[],
  banks: readonly BankForm[],
  { first, second, joined }: AskedLengths,
): readonly CollectorForm[] {
  // Any length: the usual place is as good as another.
  if (first === null && (second === null || !joined)) return collectors;
  const tube = (first ?? FIRST_TUBE) + (joined ? (second ?? SECOND_TUBE) : 0);
  const reach = (joined ? REACH.joined : REACH.straight) * tube;
  return collectors.map((collector): CollectorForm => {
    const ports = banks.flatMap(({ cylinders, firstPort: [x, y, z], pitch }) =>
      cylinders.flatMap((c, i): Vec3[] => (collector.cylinders.includes(c) ? [[x + i * pitch, y, z]] : [])),
    );
    const middle = ([0, 1, 2] as const).map((k) => ports.reduce((sum, p) => sum + p[k], 0) / ports.length);
    const away = collector.position.map((x, k) => x - middle[k]!);
    const stretch = reach / Math.hypot(...away);
    const position = away.map((x, k) => Math.round(middle[k]! + stretch * x)) as unknown as Vec3;
    return { ...collector, position };
  });
}
