/** Flanges as the paper wants them: a sheet's plan for each plate. mm, on the plate's outer face. */
import { flangePlan, type Header } from '../../geometry';
import type { FlangeSheetPlan } from './flangeSheet';

export const flangeSheetPlans = (header: Header): FlangeSheetPlan[] =>
  (header.design.flanges ?? []).flatMap((flange) => {
    const { plates, notes } = flangePlan(header, flange);
    return plates.map(
      (plate): FlangeSheetPlan => ({
        // Thickness and material stand in the notes; a title says "Flange …" before it.
        id: plate.id.replace(/^flange /, ''),
        outline: plate.outline,
        openings: plate.openings.map(({ port, loop }) => ({ label: `port ${port}`, loop })),
        steps: plate.steps.map(({ port, loop, depth }) => ({ label: `port ${port}`, loop, depth })),
        holes: plate.holes.map(({ centre, diameter, thread }) => ({ at: centre, diameter, thread })),
        thickness: plate.thickness,
        seen: 'outer face, toward the tubes',
        notes,
      }),
    );
  });
