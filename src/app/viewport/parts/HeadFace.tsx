/**
 * The face that the header bolts to: a flange of its own thickness over gasket and casting, or a bare plate where the
 * design names no flange; openings true to shape, studs with their nuts, and the way through the head, dashed.
 */
import { memo, useMemo } from 'react';
import { Matrix4, MeshBasicMaterial, Shape, ShapeGeometry, Vector2, Vector3 } from 'three';
import { addScaled, type PlatePlan } from '../../../../geometry';
import type { Vec3 } from '../../../../shared/vec3';
import type { Owned } from '../../made/owned';
import { type Ref, useSession } from '../../session';
import { emphasisOf } from '../emphasis';
import { useJoined } from '../gl/joined';
import { Lines } from '../gl/Lines';
import { useOwned } from '../gl/owned';
import type { Pickable } from '../gl/pick';
import { circle, hullOutline } from '../model/outline';
import type { Plate } from '../model/plates';
import type { Palette } from '../palette';
import { Gasket } from './Gasket';
import { MadeParts } from './MadeParts';
import { Slab } from './Slab';
import { Studs } from './Studs';

/** A bare plate's thickness and a casting's, and how far the casting shows round a flange, mm: only to look right. */
const BARE = 8;
const CASTING = 14;
const CASTING_BORDER = 7;
type Props = {
  readonly plate: Plate;
  readonly palette: Palette;
  /** The plates as they are cut, in place of the quick one. */
  readonly made: Owned | null;
  /** Of those plates. */
  readonly plans: readonly PlatePlan[];
  readonly apart: ReadonlyMap<string, Vec3> | null;
  /** Where flange, gasket and head stand while the header is shown taken apart. */
  readonly away: { readonly flange: Vec3; readonly gasket: Vec3; readonly head: Vec3 } | undefined;
  /** The flange is drawn elsewhere, and the nuts are off. */
  readonly bare?: boolean;
};

export const HeadFace = memo(function HeadFace({ plate, palette, made, plans, apart, away, bare = false }: Props) {
  const { flange } = plate;
  const thickness = flange?.thickness ?? 0;
  const gasket = flange?.gasket ?? 0;
  const openings = useMemo(() => plate.openings.map((o) => o.points), [plate]);
  const round = useMemo(() => hullOutline(plate.outline, CASTING_BORDER), [plate]);
  const matrix = useMemo(() => matrixOf(plate), [plate]);
  const inHead = useMemo(
    () =>
      plate.ports.flatMap(({ port, pose }) => [
        ...pose.position,
        ...addScaled(pose.position, pose.direction, -(port.lengthInHead ?? 0)),
      ]),
    [plate],
  );
  return (
    <>
      {flange && made && !bare && <MadeParts parts={made.parts} ride={made.ride} palette={palette} apart={apart} />}
      {flange && !made && !bare && (
        <group position={away?.flange ?? STAYS}>
          <QuickFlange plate={plate} palette={palette} />
        </group>
      )}
      {flange && gasket > 0 && (
        <group position={away?.gasket ?? STAYS}>
          {plans.map((plan) => (
            <Gasket key={plan.id} plan={plan} thickness={gasket} palette={palette} />
          ))}
          {plans.length === 0 && (
            <group matrix={matrix} matrixAutoUpdate={false}>
              <Slab
                outline={plate.outline}
                holes={openings}
                from={-thickness}
                thickness={gasket}
                colour={palette.gasket}
                palette={palette}
              />
            </group>
          )}
        </group>
      )}
      <group position={away?.head ?? STAYS}>
        <group matrix={matrix} matrixAutoUpdate={false}>
          <Slab
            outline={flange ? round : plate.outline}
            holes={openings}
            from={-thickness - gasket}
            thickness={flange ? CASTING : BARE}
            colour={palette.casting}
            palette={palette}
            edge={palette.ink}
            edgeWidth={1}
          />
          <Throats plate={plate} depth={thickness + gasket + (flange ? CASTING : BARE)} palette={palette} />
        </group>
        {flange && plate.fasteners.length > 0 && (
          <Studs plate={plate} flange={flange.id} below={thickness + gasket} bare={bare} palette={palette} />
        )}
        <Lines pairs={inHead} colour={palette.ghost} width={1.2} opacity={0.6} dash={6} />
      </group>
    </>
  );
});

const STAYS: Vec3 = [0, 0, 0];

const matrixOf = (plate: Plate): Matrix4 =>
  new Matrix4()
    .makeBasis(new Vector3(...plate.across), new Vector3(...plate.up), new Vector3(...plate.normal))
    .setPosition(...plate.origin);

/** A flange before its plates are made. */
export function QuickFlange({ plate, palette }: { readonly plate: Plate; readonly palette: Palette }) {
  const id = plate.flange!.id;
  const own = useMemo((): Ref => ({ kind: 'flange', id }), [id]);
  const emphasis = useSession((s) => emphasisOf(own, s.selection, s.hovered));
  const matrix = useMemo(() => matrixOf(plate), [plate]);
  const holes = useMemo(
    () => [
      ...plate.openings.map((o) => o.points),
      ...plate.fasteners.map(({ fastener, at }) => circle(at, fastener.hole / 2, 32)),
    ],
    [plate],
  );
  return (
    <group matrix={matrix} matrixAutoUpdate={false}>
      <Slab
        outline={plate.outline}
        holes={holes}
        from={0}
        thickness={plate.flange!.thickness}
        colour={palette.steel}
        palette={palette}
        polished
        edge={emphasis === 'none' ? palette.ink : palette.accent}
        edgeWidth={emphasis === 'none' ? 1.1 : 2.4}
        pick={own}
      />
    </group>
  );
}

type ThroatsProps = { readonly plate: Plate; readonly depth: number; readonly palette: Palette };

/** The dark of the ports behind their openings: the head is not drawn, and nobody should see through it. */
function Throats({ plate, depth, palette }: ThroatsProps) {
  const { geometry, ref } = useJoined(
    () =>
      plate.openings.map(({ port, points }) => ({
        geometry: new ShapeGeometry(new Shape(points.map(([x, y]) => new Vector2(x, y)))).translate(0, 0, 0.05 - depth),
        ref: { kind: 'port', id: port },
      })),
    [plate, depth],
  );
  const pick = useMemo((): Pickable => ({ ref }), [ref]);
  const material = useOwned(() => new MeshBasicMaterial({ color: palette.throat }), [palette]);
  return <mesh geometry={geometry} material={material} userData={{ pick }} />;
}
