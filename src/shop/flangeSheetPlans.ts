/** Flanges as the paper wants them: a sheet's plan for each plate. mm, on the plate's outer face. */
import { flangePlan, type Header, type PlateHole, type PlatePlan } from '../../geometry';
import { letter, middleOf } from './flange/plate';
import type { FlangeHole, FlangeSheetPlan } from './flangeSheet';

export const flangeSheetPlans = (header: Header): FlangeSheetPlan[] =>
  (header.design.flanges ?? []).flatMap((flange) => {
    const { plates, notes } = flangePlan(header, flange);
    return plates.map(
      (plate, k): FlangeSheetPlan => ({
        // Thickness and material stand in the notes; a title says "Flange …" before it.
        id: plate.id.replace(/^flange /, ''),
        outline: plate.outline,
        openings: plate.openings.map(({ port, loop }) => ({ label: `port ${port}`, loop })),
        steps: plate.steps.map(({ port, loop, depth }) => ({ label: `port ${port}`, loop, depth })),
        holes: [...plate.holes.map(holeOf), ...plate.bites.map((hole) => ({ ...holeOf(hole), half: true as const }))],
        thickness: plate.thickness,
        seen: 'outer face, toward the tubes',
        notes: [...notes[k]!, origins(plate, plates[0]!)],
      }),
    );
  });

/** Messages call a fastener by its place in the design, so the drawing does too. */
const holeOf = ({ fastener, centre, diameter, thread }: PlateHole): FlangeHole => ({
  at: centre,
  diameter,
  thread,
  number: fastener + 1,
});

/** Messages and files count from ports, the table from a hole: which port, and where to look for it. */
function origins({ openings }: PlatePlan, { ports: [first] }: PlatePlan): string {
  const xs = openings.map(({ loop }) => middleOf(loop)[0]);
  const [x] = xs;
  const end = x === Math.max(...xs) ? ', at the right' : x === Math.min(...xs) ? ', at the left' : '';
  const own = openings[0]!.port;
  const called = `the middle of port ${own} (${letter(0)}${openings.length > 1 ? end : ''})`;
  return own === first
    ? `Messages and the DXF count from ${called}.`
    : `Messages count from ${called}; the DXF, with all plates in it, from that of port ${first}.`;
}
