/** A collector as the pieces it is made of, each a closed shell. What cannot be built is told with the field that mends it. */
import type { Header, ResolvedMerge } from '../header/resolve';
import type { HeaderPart, Made, PartRemark } from '../parts/part';
import { coneOutline, conePiece, platePiece } from './cone';
import { fillerPiece } from './filler';
import { jointPiece, outletPiece } from './joint';
import type { PiecePlan } from './piece';
import { type CollectorPlan, collectorPlan } from './plan';
import { stubPieces } from './stubs';
import { collectorWarnings } from './warnings';

export function collectorParts(header: Header): Made {
  const made = [...header.merges.values()].map((merge) => oneCollector(header, merge));
  return {
    parts: made.flatMap((m) => m.parts),
    notMade: made.flatMap((m) => m.notMade),
    warnings: made.flatMap((m) => m.warnings),
  };
}

function oneCollector(header: Header, merge: ResolvedMerge): Made {
  const plan = collectorPlan(header, merge);
  const part = partName(plan);
  const where = (field: string) => `merges/${plan.id}/${field}`;
  const remark = ({ field, message }: { field: string; message: string }): PartRemark => ({
    part,
    where: where(field),
    message,
  });
  if (plan.problems.length > 0) return { parts: [], notMade: plan.problems.map(remark), warnings: [] };
  const outline = coneOutline(plan);
  if (!outline) {
    const message =
      'Where its tubes end, one hides behind another from the middle, so no cone can be drawn: lean them more (convergence), or let them run on farther (merging length).';
    return { parts: [], notMade: [remark({ field: 'convergence', message })], warnings: [] };
  }
  const pieces = [
    ...stubPieces(plan),
    ...fillerPiece(plan),
    ...platePiece(plan),
    conePiece(plan, outline),
    ...outletPiece(plan),
    ...jointPiece(plan),
  ];
  return {
    parts: pieces.map((piece) => partOf(plan, piece)),
    notMade: [],
    warnings: collectorWarnings(header, plan, outline.reach).map(remark),
  };
}

export const partName = ({ id }: Pick<CollectorPlan, 'id'>): string => `collector ${id}`;

function partOf(plan: CollectorPlan, { kind, name, pose, make }: PiecePlan): HeaderPart {
  const { mesh, volume, edges, flat } = make();
  return {
    id: `${partName(plan)} ${name}`,
    kind,
    name,
    of: { kind: 'merge', id: plan.id },
    mesh,
    pose,
    volume,
    material: plan.merge.material,
    edges,
    ...(flat && { flat }),
  };
}
