/**
 * What stands in for each head until its own measures are drawn: a bar behind the ports, so that no tube is laid through
 * the engine. mm, design frame.
 */
import type { Port, Surrounding } from '../../shared/design/types';
import type { EngineForm } from '../../shared/engine/form';
import { addScaled, unit } from '../vector';

/** Common practice would be a drawing of the head; a bar of this radius only says "not here". */
const BAR_RADIUS = 45;
const CLEARANCE = 5;

export function standInsOf(form: EngineForm, ports: readonly Port[]): Surrounding[] {
  const square = form.flange.thickness + form.flange.gasket + CLEARANCE + BAR_RADIUS;
  return form.banks.map((bank, b): Surrounding => {
    const own = bank.cylinders.map((c) => ports.find((p) => p.cylinder === c)!);
    // Behind the plate, and further where the ports slant along the crankshaft: tubes' ends keep their clearance.
    const slant = Math.abs(unit(own[0]!.direction)[0]);
    const depth = (square + (form.primary.tube.outsideDiameter / 2) * slant) / Math.sqrt(Math.max(0.1, 1 - slant ** 2));
    const behind = (p: Port) => addScaled(p.position, unit(p.direction), -depth);
    return {
      id: form.banks.length === 1 ? 'head' : `head ${b + 1}`,
      shape: 'capsule',
      a: behind(own[0]!),
      b: behind(own.at(-1)!),
      radius: BAR_RADIUS,
      clearance: CLEARANCE,
      kind: 'head',
    };
  });
}
