/** Everything in the design, by kind: each thing a click from its fields, each kind with a way to add one. */
import {
  type Added,
  addFlange,
  addGroup,
  addMerge,
  addPort,
  addRunner,
  addSensor,
  addService,
  addSurrounding,
  addTube,
  type Thing,
} from '../../../shared/design/edit';
import type { Design } from '../../../shared/design/types';
import { startDrawing } from '../drawing/state';
import { openImport } from '../meshes/importing/state';
import { openMirror } from '../mirror/state';
import { Swatch } from '../parts/Swatch';
import { usePaints } from '../parts/usePaints';
import { litClass, pointing, useLit } from '../parts/usePointing';
import { openLay } from '../route/state';
import type { Ref } from '../session';
import { addAndPick } from './inspectActions';
import { serviceKindName } from './specs/service';

export type Add = { readonly name: string; readonly make: (design: Design) => Added };
type Kind = {
  readonly name: string;
  readonly things: (design: Design) => readonly Thing[];
  readonly adds: readonly Add[];
};

const listed = (
  kind: 'port' | 'flange' | 'merge' | 'runner' | 'surrounding' | 'service' | 'sensor',
  list: readonly { readonly id: string }[] = [],
) => list.map(({ id }): Thing => ({ kind, id }));

/** What must stay reachable beside the header's own fasteners. */
export const SERVICE_ADDS: readonly Add[] = (['spark-plug', 'oil-filter', 'starter', 'dipstick', 'bolt'] as const).map(
  (kind) => ({ name: serviceKindName(kind), make: (d) => addService(d, kind) }),
);
export const SENSOR_ADDS: readonly Add[] = [
  { name: 'Oxygen', make: (d) => addSensor(d, 'oxygen') },
  { name: 'Temperature', make: (d) => addSensor(d, 'temperature') },
];

const KINDS: readonly Kind[] = [
  { name: 'Ports', things: (d) => listed('port', d.ports), adds: [{ name: 'Port', make: addPort }] },
  { name: 'Flanges', things: (d) => listed('flange', d.flanges), adds: [{ name: 'Flange', make: addFlange }] },
  {
    name: 'Tubes',
    things: (d) => Object.keys(d.tubes).map((id): Thing => ({ kind: 'tube', id })),
    adds: [{ name: 'Tube', make: addTube }],
  },
  { name: 'Collectors', things: (d) => listed('merge', d.merges), adds: [{ name: 'Collector', make: addMerge }] },
  { name: 'Runners', things: (d) => listed('runner', d.runners), adds: [{ name: 'Runner', make: addRunner }] },
  {
    name: 'Groups',
    things: (d) => Object.keys(d.groups).map((id): Thing => ({ kind: 'group', id })),
    adds: [{ name: 'Group', make: addGroup }],
  },
  {
    name: 'Surroundings',
    things: (d) => listed('surrounding', d.surroundings),
    adds: [
      { name: 'Box', make: (d) => addSurrounding(d, 'box') },
      { name: 'Bar', make: (d) => addSurrounding(d, 'capsule') },
      { name: 'Cylinder', make: (d) => addSurrounding(d, 'cylinder') },
      { name: 'Plane', make: (d) => addSurrounding(d, 'plane') },
    ],
  },
  {
    name: 'To reach',
    things: (d) => listed('service', d.service),
    adds: SERVICE_ADDS,
  },
  { name: 'Sensors', things: (d) => listed('sensor', d.sensors), adds: SENSOR_ADDS },
];

export function Outline({ design }: { readonly design: Design }) {
  return (
    <section className="panel outline" aria-label="In this design">
      <h2>In this design</h2>
      <div className="outline-kind">
        <h3>Engine</h3>
        <div className="outline-things">
          <Chip
            thing={{ kind: 'engine', id: '' }}
            name={design.engine?.cylinders ? `${design.engine.cylinders} cylinders` : 'Engine'}
          />
          {design.ports.length > 0 && (
            <button type="button" className="chip add" onClick={openMirror}>
              Mirror a bank…
            </button>
          )}
        </div>
      </div>
      {KINDS.map(({ name, things, adds }) => (
        <div className="outline-kind" key={name}>
          <h3>{name}</h3>
          <div className="outline-things">
            {things(design).map((thing) => (
              <Chip key={thing.id} thing={thing} name={thing.id} />
            ))}
            {adds.map((add) => (
              <button
                key={add.name}
                type="button"
                className="chip add"
                aria-label={`Add a ${add.name.toLowerCase()}`}
                title={`Add a ${add.name.toLowerCase()}`}
                onClick={() => addAndPick(add.make, '')}
              >
                + {adds.length > 1 && add.name}
              </button>
            ))}
            {name === 'Runners' && design.runners.length > 0 && (
              <button type="button" className="chip add" onClick={() => openLay()}>
                Lay the header…
              </button>
            )}
            {name === 'Surroundings' && (
              <>
                <button type="button" className="chip add" onClick={() => startDrawing('box')}>
                  Draw in the picture…
                </button>
                <button type="button" className="chip add" onClick={() => openImport()}>
                  Scan or mesh…
                </button>
              </>
            )}
          </div>
        </div>
      ))}
    </section>
  );
}

function Chip({ thing, name }: { readonly thing: Thing; readonly name: string }) {
  const ref = thing as Ref;
  const lit = useLit(ref);
  const paint = usePaints().get(thing.kind === 'runner' ? thing.id : '');
  return (
    <button type="button" className={`chip${litClass(lit)}`} {...pointing(ref)}>
      {paint && <Swatch paint={paint} />}
      {name}
    </button>
  );
}
