/** A flange as the kernel draws it flat, for its pages: each plate as it is seen on its outer face, holes that it shares with the next in its outline. */
import type { FlangePlan } from '../../../geometry';
import type { FlangeSheetPlan } from '../flangeSheet';

export const plateSheetPlans = ({ plates, notes }: FlangePlan): FlangeSheetPlan[] =>
  plates.map(({ id, outline, openings, steps, holes, thickness }) => ({
    id: id.replace(/^flange /, ''),
    outline,
    openings: openings.map(({ port, loop }) => ({ loop, label: `port ${port}` })),
    steps: steps.map(({ port, loop, depth }) => ({ loop, depth, label: `port ${port}` })),
    holes: holes.map(({ centre, diameter, thread }) => ({ at: centre, diameter, thread })),
    thickness,
    seen: 'outer face, toward the tubes',
    // The DXF's layer has no meaning on paper.
    notes: notes.map((note) => note.replace('Steps (ETCH)', 'Steps (dashed)')),
  }));
