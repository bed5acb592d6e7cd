/**
 * The design that a form means, before any runner has a line: ports, flanges, tubes, collectors, runners by name, groups.
 * Merges on the way have no place yet: mergePlaces.ts proposes some. mm and degrees, as in the document.
 */
import type { Design, Engine, Group, Port, Runner } from '../../shared/design/types';
import type { EngineForm } from '../../shared/engine/form';
import { portPlaces } from '../../shared/engine/formPorts';
import { RADIANS } from '../tolerance';
import { addScaled, reject, scale, unit } from '../vector';
import { flangesOf } from './flanges';
import type { Joining } from './joining';
import { standInsOf } from './standIns';

export const PRIMARIES = 'primaries';
export const SECONDARIES = 'secondaries';

/** Without merges: they differ from attempt to attempt. */
export function partsOf(form: EngineForm, joining: readonly Joining[]): Omit<Design, 'merges'> {
  const ports = portsOf(form);
  const { primary, secondary, tolerance } = form;
  const staged = secondary !== null && joining.some((j) => j.first.length > 0);
  const groups: Record<string, Group> = { [PRIMARIES]: { length: primary.length, tolerance } };
  if (staged) groups[SECONDARIES] = { length: secondary.length, tolerance };
  return {
    format: 'evenrun-design',
    version: 1,
    title: form.title,
    display: form.display,
    engine: engineOf(form),
    ports,
    flanges: flangesOf(form, ports),
    tubes: { primary: primary.tube, ...(staged ? { secondary: secondary.tube } : {}) },
    tooling: { primary: primary.tooling, ...(staged ? { secondary: secondary.tooling } : {}) },
    runners: joining.flatMap((j) => runnersOf(j)),
    groups,
    surroundings: standInsOf(form, ports),
    clearance: { tubeToTube: form.tubeToTube },
  };
}

const portId = (cylinder: number): string => `p${cylinder}`;

function portsOf(form: EngineForm): Port[] {
  const { opening, angle, lengthInHead } = form.port;
  return portPlaces(form).map(({ cylinder, bank, position }): Port => {
    const out = unit(form.banks[bank]!.direction);
    const up = unit(reject(form.banks[bank]!.up, out));
    const turn = angle * RADIANS;
    const direction = addScaled(scale(out, Math.cos(turn)), up, -Math.sin(turn));
    return { id: portId(cylinder), cylinder, position, direction, up, opening, lengthInHead };
  });
}

/** The form's facts about the engine, and none that it leaves open. */
function engineOf(form: EngineForm): Engine {
  const { bore, stroke, rod, compressionRatio, rpm, intakeValve, exhaustValve } = form;
  return {
    cylinders: form.cylinders,
    banks: form.banks.map((b) => b.cylinders),
    firingOrder: form.firingOrder,
    ...(bore === undefined ? {} : { bore }),
    ...(stroke === undefined ? {} : { stroke }),
    ...(rod === undefined ? {} : { rod }),
    ...(compressionRatio === undefined ? {} : { compressionRatio }),
    ...(rpm === undefined ? {} : { rpm }),
    ...(intakeValve === undefined ? {} : { intakeValve }),
    ...(exhaustValve === undefined ? {} : { exhaustValve }),
  };
}

function runnersOf({ collector, first, cylinders }: Joining): Runner[] {
  const primary = (cylinder: number, merge: string): Runner => ({
    id: `r${cylinder}`,
    tube: 'primary',
    group: PRIMARIES,
    from: { port: portId(cylinder) },
    to: { merge },
  });
  if (first.length === 0) return cylinders.map((c) => primary(c, collector));
  return [
    ...first.flatMap(({ merge, cylinders: joined }) => joined.map((c) => primary(c, merge))),
    ...first.map(
      ({ merge, cylinders: joined }): Runner => ({
        id: `s${joined.join('-')}`,
        tube: 'secondary',
        group: SECONDARIES,
        from: { merge },
        to: { merge: collector },
      }),
    ),
  ];
}
