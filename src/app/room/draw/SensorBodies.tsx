/**
 * Sensors in their bungs. Their sizes come from the last answer; where the tube they stand in has moved since, they ride along.
 * The picked one shows its spanner.
 */
import { memo, useMemo } from 'react';
import { Matrix4, Quaternion, Vector3 } from 'three';
import { distance, type Header, type SensorEntry } from '../../../../geometry';
import { type BungPlace, bungPlace } from '../../../../geometry/sensor/place';
import { type Ref, useSession } from '../../session';
import { emphasisOf } from '../../viewport/emphasis';
import { InkedMesh } from '../../viewport/gl/InkedMesh';
import { useOwned } from '../../viewport/gl/owned';
import type { Pickable } from '../../viewport/gl/pick';
import { matt } from '../../viewport/gl/satin';
import type { Palette } from '../../viewport/palette';
import { useAnswers } from '../answers';
import { barGeometry } from './bar';
import { Solids } from './ToolShown';

type Props = { readonly header: Header; readonly palette: Palette; readonly stands: (key: string) => boolean };

export function SensorBodies({ header, palette, stands }: Props) {
  const entries = useAnswers((s) => s.sensors.value);
  return (
    <>
      {(header.design.sensors ?? []).map((sensor) => {
        const entry = entries?.find(({ id }) => id === sensor.id);
        const { on } = sensor;
        const key = 'runner' in on ? `runner/${on.runner}` : `merge/${on.merge}`;
        const place = entry && entry.solids.length > 0 && stands(key) ? bungPlace(header, sensor) : null;
        return place && <Body key={sensor.id} entry={entry!} place={place} palette={palette} />;
      })}
    </>
  );
}

/** Bung and body come first among the solids, then the tool. */
const OWN = 2;

type BodyProps = { readonly entry: SensorEntry; readonly place: BungPlace; readonly palette: Palette };

const Body = memo(
  function Body({ entry, place, palette }: BodyProps) {
    const { id } = entry;
    const ref = useMemo((): Ref => ({ kind: 'sensor', id }), [id]);
    const emphasis = useSession((s) => emphasisOf(ref, s.selection, s.hovered));
    const matrix = useMemo(() => ride(entry, place), [entry, place]);
    const tool = useMemo(() => ({ solids: entry.solids.slice(OWN) }), [entry]);
    const pick = useMemo((): Pickable => ({ ref: () => ref }), [ref]);
    return (
      <group matrix={matrix} matrixAutoUpdate={false}>
        {entry.solids.slice(0, OWN).map((solid, i) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: always bung, then body
          <Bar key={i} solid={solid} steel={i === 0} palette={palette} emphasis={emphasis} pick={pick} />
        ))}
        {emphasis === 'selected' && tool.solids.length > 0 && (
          <Solids of={tool} colour={entry.spanner.fits ? palette.accent : palette.fail} />
        )}
      </group>
    );
  },
  (a, b) =>
    a.entry === b.entry &&
    a.palette === b.palette &&
    distance(a.place.at, b.place.at) === 0 &&
    distance(a.place.axis, b.place.axis) === 0,
);

type BarProps = {
  readonly solid: SensorEntry['solids'][number];
  readonly steel: boolean;
  readonly palette: Palette;
  readonly emphasis: 'none' | 'hovered' | 'selected';
  readonly pick: Pickable;
};

function Bar({ solid, steel, palette, emphasis, pick }: BarProps) {
  const geometry = useOwned(() => barGeometry(solid), [solid]);
  const colour = steel ? palette.steel : palette.gasket;
  const material = useOwned(() => matt(colour, steel ? 0.45 : 0.6, steel ? 0.8 : 0.4), [colour, steel]);
  return (
    <InkedMesh
      geometry={geometry}
      material={material}
      palette={palette}
      emphasis={emphasis}
      pick={pick}
      cutColour={colour}
    />
  );
}

/** From where it was when it was measured to where it is. */
function ride({ at, axis }: SensorEntry, now: BungPlace): Matrix4 {
  const turn = new Quaternion().setFromUnitVectors(new Vector3(...axis), new Vector3(...now.axis));
  const from = new Matrix4().makeTranslation(-at[0], -at[1], -at[2]);
  return new Matrix4().compose(new Vector3(...now.at), turn, new Vector3(1, 1, 1)).multiply(from);
}
