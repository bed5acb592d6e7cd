/**
 * A flange as it is cut and milled, drawn flat: of each plate its outline, openings, steps and holes as exact closed curves, on
 * its outer face; x = up × normal, y = up, about its first port's middle. What cannot be cut is named, with the remedy. mm.
 */
import type { Flange } from '../../shared/design/types';
import { rememberedOfTwo } from '../../shared/remember';
import type { HoleClass } from '../../shared/stock/holes';
import type { Pose } from '../header/merge';
import type { Header } from '../header/resolve';
import type { PartRemark } from '../parts/part';
import type { Loop, Point2 } from '../plane/loop';
import { checkPorts, checkThickness } from './checkFlange';
import { checkPlate } from './checkPlate';
import { type Draft, draftOne, draftSeparate } from './draftPlates';
import { gather, type Like } from './gather';
import { plateNotes } from './notes';

export type PlateHole = {
  /** Which of the flange's fasteners, from 0. */
  readonly fastener: number;
  readonly centre: Point2;
  readonly diameter: number;
  readonly thread: string;
  readonly series: HoleClass | null;
};

export type PlatePlan = {
  /** `flange f1`, or `flange f1 plate 2`. */
  readonly id: string;
  /** The outer face: z of the plate's frame leaves the head, and the plate lies below. */
  readonly pose: Pose;
  readonly thickness: number;
  readonly ports: readonly string[];
  readonly outline: Loop;
  /** One for each port, through the whole plate or up to its step. */
  readonly openings: readonly { readonly port: string; readonly loop: Loop }[];
  /** Milled from the outer face. */
  readonly steps: readonly { readonly port: string; readonly loop: Loop; readonly depth: number }[];
  readonly holes: readonly PlateHole[];
  /** Holes shared with the plate beside it: each has a part of them, as a bite out of its outline. */
  readonly bites: readonly PlateHole[];
};

export type FlangePlan = {
  readonly flange: Flange;
  /** Those that can be cut. */
  readonly plates: readonly PlatePlan[];
  readonly notMade: readonly PartRemark[];
  readonly warnings: readonly PartRemark[];
  /** For the drawing of each plate, a line each. */
  readonly notes: readonly (readonly string[])[];
};

/** Worked out once for a header: solids, drawings and paper all ask for it. */
export const flangePlan: (header: Header, flange: Flange) => FlangePlan = rememberedOfTwo(planned);

function planned(header: Header, flange: Flange): FlangePlan {
  const part = `flange ${flange.id}`;
  const where = `flanges/${flange.id}`;
  const ports = flange.ports.flatMap((id) => header.ports.get(id) ?? []);
  const nothing = { flange, plates: [], warnings: [], notes: [] };
  if (ports.length === 0)
    return {
      ...nothing,
      notMade: [{ part, where: `${where}/ports`, message: 'It has no ports; name those that it holds.' }],
    };
  const general = [...checkThickness(header, flange), ...checkPorts(header, flange, ports)];
  const refused = general.filter((r) => r.refuses);
  if (refused.length > 0) return { ...nothing, notMade: refused.map((r) => remark(part, r)) };

  const drafts =
    flange.plates === 'separate' ? draftSeparate(header, flange, ports) : [draftOne(header, flange, ports)];
  const judged = drafts.map((draft) => ({ draft, found: gather(checkPlate(header, flange, draft)) }));
  const sound = judged.filter(({ found }) => !found.some((r) => r.refuses));
  const remarks = (refuses: boolean) =>
    judged.flatMap(({ draft, found }) => found.filter((r) => r.refuses === refuses).map((r) => remark(draft.id, r)));
  const plates = sound.map(({ draft }) => planOf(draft, flange));
  return {
    flange,
    plates,
    notMade: remarks(true),
    warnings: onceEach([...general.map((r) => remark(part, r)), ...remarks(false)]),
    notes: plates.map((plate) => plateNotes(header, flange, plate, plates)),
  };
}

/** What a check finds: with `refuses`, the plate cannot be made. */
export type Finding = {
  readonly where: string;
  readonly message: string;
  readonly refuses: boolean;
  readonly like?: Like;
};

const remark = (part: string, { where, message }: Finding): PartRemark => ({ part, where, message });

/** Two plates that share a fastener say the same of it. */
const onceEach = (remarks: readonly PartRemark[]): PartRemark[] =>
  remarks.filter((r, k) => remarks.findIndex((o) => o.where === r.where && o.message === r.message) === k);

const planOf = (
  { id, frame, ports, outline, openings, steps, holes, bites }: Draft,
  { thickness }: Flange,
): PlatePlan => ({
  id,
  pose: frame.pose,
  thickness,
  ports,
  outline,
  openings,
  steps,
  holes,
  bites,
});
