/**
 * The real parts of one owner in satin steel, weld and cut lines crisp: together one surface, or each by itself while the
 * header is shown taken apart. Where their owner stands elsewhere than when they were made, they go with it.
 */
import { memo, useMemo } from 'react';
import { type Material, Matrix4, Vector3 } from 'three';
import { partFrame } from '../../../../geometry';
import type { Vec3 } from '../../../../shared/vec3';
import type { Owned } from '../../made/owned';
import type { ShownPart } from '../../made/shape';
import { type Ref, useSession } from '../../session';
import { type Emphasis, emphasisOf } from '../emphasis';
import { InkedMesh } from '../gl/InkedMesh';
import { Lines } from '../gl/Lines';
import { useOwned } from '../gl/owned';
import type { Pickable } from '../gl/pick';
import { matt, satin } from '../gl/satin';
import { surface } from '../gl/surface';
import { joinShapes } from '../model/joinShapes';
import type { Palette } from '../palette';
import { PointedPart } from './PointedPart';

type Props = {
  readonly parts: readonly ShownPart[];
  readonly ride: Owned['ride'];
  readonly palette: Palette;
  /** How far each stands off its place, by part id; null: put together. */
  readonly apart: ReadonlyMap<string, Vec3> | null;
};

/** A plate is rolled and cut, not polished. */
const isPlate = ({ of }: ShownPart): boolean => of.kind === 'flange';

export const MadeParts = memo(
  function MadeParts({ parts, ride, palette, apart }: Props) {
    const [first] = parts;
    const { kind, id } = first!.of;
    const own = useMemo((): Ref => ({ kind, id }), [kind, id]);
    const emphasis = useSession((s) => emphasisOf(own, s.selection, s.hovered));
    const flat = isPlate(first!);
    const steel = useOwned(() => (flat ? matt(palette.steel, 0.42, 0.65) : satin(palette.steel, 0.4)), [palette, flat]);
    const alone = useMemo(() => parts.map((part) => [part]), [parts]);
    const matrix = useMemo(() => rideMatrix(ride), [ride]);
    const look = { own, palette, emphasis, steel };
    return (
      <group matrix={matrix} matrixAutoUpdate={false}>
        {apart ? (
          alone.map((group) => {
            const { id: name } = group[0]!;
            return (
              <group key={name} position={apart.get(name) ?? STAYS}>
                <Body parts={group} {...look} />
                <PointedPart parts={group} palette={palette} />
              </group>
            );
          })
        ) : (
          <>
            <Body parts={parts} {...look} />
            <PointedPart parts={parts} palette={palette} />
          </>
        )}
      </group>
    );
  },
  (a, b) =>
    a.parts === b.parts &&
    a.palette === b.palette &&
    a.apart === b.apart &&
    a.ride?.from === b.ride?.from &&
    a.ride?.to === b.ride?.to,
);

const STAYS: Vec3 = [0, 0, 0];

type BodyProps = {
  readonly parts: readonly ShownPart[];
  readonly own: Ref;
  readonly palette: Palette;
  readonly emphasis: Emphasis;
  readonly steel: Material;
};

const Body = memo(function Body({ parts, own, palette, emphasis, steel }: BodyProps) {
  const joined = useMemo(() => joinShapes(parts), [parts]);
  const geometry = useOwned(() => surface(joined), [joined]);
  const pick = useMemo((): Pickable => ({ ref: () => own }), [own]);
  return (
    <>
      <InkedMesh
        geometry={geometry}
        outerCount={joined.outerCount}
        material={steel}
        palette={palette}
        emphasis={emphasis}
        pick={pick}
        cutColour={palette.steel}
      />
      <Lines pairs={joined.edges} colour={palette.ink} width={1.1} opacity={0.7} />
    </>
  );
});

/** From where they were made to where their owner is now. */
function rideMatrix(ride: Owned['ride']): Matrix4 {
  if (!ride || ride.from === ride.to) return new Matrix4();
  const [from, to] = [ride.from, ride.to].map((pose) => {
    const [x, y, z, o] = partFrame(pose).map((v) => new Vector3(...v)) as [Vector3, Vector3, Vector3, Vector3];
    return new Matrix4().makeBasis(x, y, z).setPosition(o);
  });
  return to!.multiply(from!.invert());
}
