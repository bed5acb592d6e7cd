/** A collector as the pieces it is made of, each a closed shell. What cannot be built is told with the field that mends it. */
import type { Header, ResolvedMerge } from '../header/resolve';
import type { HeaderPart, Made, PartRemark } from '../parts/part';
import { coneOutline, conePiece, platePiece } from './cone';
import { fillerPiece } from './filler';
import { jointPiece, outletPiece } from './joint';
import type { PiecePlan } from './piece';
import { type CollectorPlan, collectorPlan } from './plan';
import { stubPieces } from './stubs';

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
    warnings: warningsOf(header, plan, outline.reach).map(remark),
  };
}

export const partName = ({ id }: Pick<CollectorPlan, 'id'>): string => `collector ${id}`;

function partOf(plan: CollectorPlan, { kind, name, pose, make }: PiecePlan): HeaderPart {
  const { mesh, volume, edges } = make();
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
  };
}

/** Steeper than this a cone chokes the flow it should lead: common practice, degrees to the axis. */
const STEEPEST = 25;

function warningsOf(header: Header, plan: CollectorPlan, reach: readonly number[]) {
  const warnings: { field: string; message: string }[] = [];
  const run = plan.coneEnd - plan.plateEnd;
  const steep = (Math.atan((Math.max(...reach) - plan.outletRadius) / run) * 180) / Math.PI;
  if (steep > STEEPEST)
    warnings.push({
      field: 'length',
      message: `Its cone narrows at ${steep.toFixed(0)}° to the axis over ${run.toFixed(0)} mm; common practice stays under ${STEEPEST}°. Make the collector longer, lean its tubes more, or choose a wider outlet.`,
    });
  const sizes = new Set(header.runners.filter((r) => r.runner.to.merge === plan.id).map((r) => r.tube.outsideDiameter));
  if (sizes.size > 1)
    warnings.push({
      field: 'inlets',
      message: `Tubes of ${[...sizes].map((d) => `${d} mm`).join(' and ')} enter it; its own are made for the widest, ${2 * plan.tubeRadius} mm: weld a step down on the others, or use one size.`,
    });
  return warnings;
}
