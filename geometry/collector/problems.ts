/** What keeps a collector from being built, each with the field that mends it. mm. */
import { deg, type Say } from '../check/words';
import { DEGREES } from '../tolerance';
import { LEAST_BRIDGE, neighbours, reachPastPlane } from './inlets';
import { leastOutlet } from './jointSizes';
import type { CollectorPlan, Meeting } from './plan';
import { reachThrough } from './sharedPlane';

export type CollectorRemark = { readonly field: string; readonly message: string };

type Unjudged = Omit<CollectorPlan, 'problems'>;

/** Least cone, mm; least tube past the reach of a leaning square end. */
const LEAST_CONE = 15;
const LEAST_STUB = 1;
/** How much nearer than their diameter inlets may stand, mm: rounding of a typed pitch. */
const OVERLAP_SLACK = 0.05;

export function collectorProblems(plan: Unjudged, meeting: Meeting, say: Say): CollectorRemark[] {
  const { tubeRadius, boreRadius, merge } = plan;
  if (!(boreRadius > 0))
    return [
      { field: 'wall', message: `The wall of ${say(merge.wall)} leaves no bore in a tube of ${say(2 * tubeRadius)}.` },
    ];
  return [
    ...overlapping(plan, say),
    ...leaning(plan, meeting, say),
    ...bridged(plan, meeting, say),
    ...along(plan, say),
  ];
}

function overlapping({ inlets, tubeRadius, merge }: Unjudged, say: Say): CollectorRemark[] {
  const through = neighbours(inlets).flatMap(([a, b]) => [
    reachThrough(a, b, tubeRadius),
    reachThrough(b, a, tubeRadius),
  ]);
  const overlap = 2 * Math.max(0, ...through.map(({ by }) => by));
  if (overlap <= OVERLAP_SLACK) return [];
  const grow = Math.max(...through.map((t) => t.grow));
  const message = `Its inlets overlap by ${say(overlap)}: tubes of ${say(2 * tubeRadius)} stand at a pitch of ${say(merge.pitch)}. Make the pitch at least ${say(Math.ceil(10 * grow * merge.pitch) / 10)}, or choose narrower tube.`;
  return [{ field: 'pitch', message }];
}

/** Which number made tubes end where they do. */
const endedBy = ({ merge }: Unjudged, otherwise: string): string =>
  merge.merge.mergingLength === undefined ? otherwise : 'mergingLength';

function leaning(plan: Unjudged, { apex }: Meeting, say: Say): CollectorRemark[] {
  const { convergence, tubeRadius, tubesEnd, inlets } = plan;
  if (tubesEnd > apex)
    return [
      {
        field: 'mergingLength',
        message: `Its tubes would cross ${say(apex)} from the inlets: make the merging length less than that.`,
      },
    ];
  const least = reachPastPlane(tubeRadius, convergence) + LEAST_STUB;
  if (convergence === 0 || inlets.length < 2 || tubesEnd >= least) return [];
  const message = `Tubes that lean by ${deg(convergence * DEGREES)} reach ${say(reachPastPlane(tubeRadius, convergence))} past the plane of the inlets with their square ends, and end ${say(tubesEnd)} from it: let them run on for at least ${say(least)} (merging length), or lean them less (convergence).`;
  return [{ field: endedBy(plan, 'convergence'), message }];
}

function bridged(plan: Unjudged, { sides, apart }: Meeting, say: Say): CollectorRemark[] {
  const { meets, inlets, tubesEnd } = plan;
  if (meets || inlets.length === 1 || tubesEnd <= apart) return [];
  const message = Number.isFinite(sides)
    ? `${say(tubesEnd)} from the inlets its bores are less than ${say(LEAST_BRIDGE)} apart: too near for a plate, too far to meet. Let tubes run on to ${say(1.1 * sides)} (merging length), or lean them more (convergence).`
    : `Less than ${say(LEAST_BRIDGE)} of metal would be left between its bores: make the pitch larger.`;
  return [{ field: endedBy(plan, 'pitch'), message }];
}

/** Room along the axis: for the joint's hold on the outlet, and for the cone. */
function along(plan: Unjudged, say: Say): CollectorRemark[] {
  const { merge, joint, length, coneEnd, plateEnd, weldGap } = plan;
  const found: CollectorRemark[] = [];
  const outlet = length - coneEnd;
  const least = leastOutlet(joint);
  if (least === 0 && outlet > 0 && outlet <= weldGap) {
    const message = `The weld gap of ${say(weldGap)} leaves nothing of its outlet of ${say(outlet)}: make the gap less.`;
    found.push({ field: 'weldGap', message });
  }
  if (least > 0 && outlet < least + weldGap) {
    const message = `A ${joint} joint takes ${say(least)} of plain outlet, and ${say(Math.max(0, outlet - weldGap))} is left: make the outlet length at least ${say(least + weldGap)}.`;
    found.push({ field: 'outletLength', message });
  }
  const cone = coneEnd - plateEnd - weldGap;
  if (cone < LEAST_CONE) {
    const { mergingLength, outletLength } = merge.merge;
    const field = outletLength !== undefined && outlet > length / 2 ? 'outletLength' : endedBy(plan, 'length');
    const wish = [
      `make the collector ${say(length + LEAST_CONE - cone)} long`,
      ...(outletLength !== undefined && outlet - (LEAST_CONE - cone) >= least
        ? [`its outlet length at most ${say(outlet - (LEAST_CONE - cone))}`]
        : []),
      ...(mergingLength !== undefined && mergingLength > LEAST_CONE - cone
        ? [`its merging length at most ${say(mergingLength - (LEAST_CONE - cone))}`]
        : []),
      ...(weldGap > LEAST_CONE / 2 ? ['the weld gap less'] : []),
    ].join(', or ');
    const message = `${cone > 0 ? `Only ${say(cone)} is` : 'Nothing is'} left for its cone, which needs at least ${say(LEAST_CONE)}: ${wish}.`;
    found.push({ field, message });
  }
  return found;
}
