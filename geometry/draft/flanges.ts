/**
 * A flange for each bank, with studs between its ports and beyond the outer ones, above and below: common practice. Far
 * enough from each tube that a nut can be turned. mm, design frame; studs stand along the ports' direction.
 */
import type { Fastener, Flange, Port } from '../../shared/design/types';
import type { BankForm, EngineForm } from '../../shared/engine/form';
import type { Vec3 } from '../../shared/vec3';
import { addScaled, unit } from '../vector';

/** From a tube's outside to a stud's middle: weld, half a nut across its corners, and a spanner's wall. */
const NUT_ROOM = 14;
/** Studs stand at least so far above or below the line of ports. */
const LEAST_RISE = 16;

export function flangesOf(form: EngineForm, ports: readonly Port[]): Flange[] {
  const { thickness, gasket, material } = form.flange;
  return form.banks.map((bank, b): Flange => {
    const own = bank.cylinders.map((c) => ports.find((p) => p.cylinder === c)!);
    return {
      id: form.banks.length === 1 ? 'flange' : `flange ${b + 1}`,
      ports: own.map((p) => p.id),
      thickness,
      gasket,
      material,
      fasteners: fastenersOf(form, bank, own),
    };
  });
}

function fastenersOf({ flange, primary, port }: EngineForm, bank: BankForm, ports: readonly Port[]): Fastener[] {
  const { opening } = port;
  const half = (side: 'width' | 'height'): number => (opening.shape === 'round' ? opening.diameter : opening[side]) / 2;
  const away = Math.max(primary.tube.outsideDiameter / 2, half('width'), half('height')) + NUT_ROOM;
  const pitch = Math.abs(bank.pitch);
  const rise =
    ports.length > 1 ? Math.max(LEAST_RISE, Math.sqrt(Math.max(0, away ** 2 - (pitch / 2) ** 2))) : LEAST_RISE;
  const beyond = Math.sqrt(Math.max(away ** 2 - rise ** 2, 0)) + (rise >= away ? half('width') : 0);
  const along: Vec3 = [Math.sign(bank.pitch) || 1, 0, 0];
  const up = unit(ports[0]!.up);
  const between = ports.slice(1).map((p): Vec3 => addScaled(p.position, along, -pitch / 2));
  const ends = [addScaled(ports[0]!.position, along, -beyond), addScaled(ports.at(-1)!.position, along, beyond)];
  return [ends[0]!, ...between, ends[1]!].flatMap((at) =>
    [1, -1].map(
      (side): Fastener => ({
        position: addScaled(at, up, side * rise),
        kind: 'stud',
        thread: flange.thread,
        length: flange.studLength,
        hole: flange.hole,
      }),
    ),
  );
}
