/**
 * The face that the header bolts to: a flange of its own thickness over gasket and casting, or a bare plate where the
 * design names no flange; openings true to shape, studs with their nuts, and the way through the head, dashed.
 */
import { memo, useMemo } from 'react';
import {
  CylinderGeometry,
  EdgesGeometry,
  ExtrudeGeometry,
  Matrix4,
  MeshBasicMaterial,
  Path,
  Shape,
  ShapeGeometry,
  Vector2,
  Vector3,
} from 'three';
import { addScaled, cross } from '../../../../geometry';
import type { Vec3 } from '../../../../shared/vec3';
import { type Ref, useSession } from '../../session';
import { CutFace } from '../cuts/CutFace';
import { emphasisOf } from '../emphasis';
import { Lines } from '../gl/Lines';
import { useOwned } from '../gl/owned';
import type { Pickable } from '../gl/pick';
import { matt } from '../gl/satin';
import { circle, hullOutline, type Point2 } from '../model/outline';
import { fromPlate, type Plate } from '../model/plates';
import type { Palette } from '../palette';

/** A bare plate's thickness and a casting's, and how far the casting shows round a flange, mm: only to look right. */
const BARE = 8;
const CASTING = 14;
const CASTING_BORDER = 7;
/** A slight broken edge catches the light. */
const CHAMFER = 0.7;

type Props = { readonly plate: Plate; readonly palette: Palette };

export const HeadFace = memo(function HeadFace({ plate, palette }: Props) {
  const { flange } = plate;
  const thickness = flange?.thickness ?? 0;
  const gasket = flange?.gasket ?? 0;
  const openings = useMemo(() => plate.openings.map((o) => o.points), [plate]);
  const holes = useMemo(() => plate.fasteners.map(({ fastener, at }) => circle(at, fastener.hole / 2, 32)), [plate]);
  const round = useMemo(() => hullOutline(plate.outline, CASTING_BORDER), [plate]);
  const own = useMemo(
    (): Ref => (flange ? { kind: 'flange', id: flange.id } : { kind: 'port', id: plate.ports[0]!.port.id }),
    [flange, plate],
  );
  const emphasis = useSession((s) => (flange ? emphasisOf(own, s.selection, s.hovered) : 'none'));
  const matrix = useMemo(
    () =>
      new Matrix4()
        .makeBasis(new Vector3(...plate.across), new Vector3(...plate.up), new Vector3(...plate.normal))
        .setPosition(...plate.origin),
    [plate],
  );
  const inHead = useMemo(
    () =>
      plate.ports.flatMap(({ port, pose }) => [
        ...pose.position,
        ...addScaled(pose.position, pose.direction, -(port.lengthInHead ?? 0)),
      ]),
    [plate],
  );
  return (
    <group>
      <group matrix={matrix} matrixAutoUpdate={false}>
        {flange && (
          <Slab
            outline={plate.outline}
            holes={[...openings, ...holes]}
            from={0}
            thickness={thickness}
            colour={palette.steel}
            palette={palette}
            polished
            edge={emphasis === 'none' ? palette.ink : palette.accent}
            edgeWidth={emphasis === 'none' ? 1.1 : 2.4}
            pick={own}
          />
        )}
        {flange && gasket > 0 && (
          <Slab
            outline={plate.outline}
            holes={openings}
            from={-thickness}
            thickness={gasket}
            colour={palette.gasket}
            palette={palette}
          />
        )}
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
        {openings.map((points, i) => (
          <Throat
            key={plate.openings[i]!.port}
            port={plate.openings[i]!.port}
            points={points}
            depth={thickness + gasket + (flange ? CASTING : BARE)}
            palette={palette}
          />
        ))}
      </group>
      {plate.fasteners.map(({ fastener, at }, i) => (
        <Stud
          // biome-ignore lint/suspicious/noArrayIndexKey: fasteners have no id; their order is theirs
          key={i}
          own={flange ? { flange: flange.id, index: i } : null}
          foot={fromPlate(plate, at)}
          axis={plate.normal}
          side={plate.across}
          diameter={threadDiameter(fastener.thread) ?? fastener.hole * 0.9}
          length={fastener.length ?? 0}
          bolt={fastener.kind !== 'stud'}
          below={thickness + gasket}
          palette={palette}
        />
      ))}
      <Lines pairs={inHead} colour={palette.ghost} width={1.2} opacity={0.6} dash={6} />
    </group>
  );
});

type SlabProps = {
  readonly outline: readonly Point2[];
  readonly holes: readonly (readonly Point2[])[];
  /** Height of the outer face; the slab lies below it. */
  readonly from: number;
  readonly thickness: number;
  readonly colour: string;
  readonly palette: Palette;
  readonly polished?: boolean;
  readonly edge?: string;
  readonly edgeWidth?: number;
  readonly pick?: Ref;
};

function Slab({
  outline,
  holes,
  from,
  thickness,
  colour,
  palette,
  polished = false,
  edge,
  edgeWidth = 1,
  pick,
}: SlabProps) {
  const geometry = useOwned(() => {
    const shape = new Shape(outline.map(([x, y]) => new Vector2(x, y)));
    for (const hole of holes) shape.holes.push(new Path([...hole].reverse().map(([x, y]) => new Vector2(x, y))));
    const chamfer = polished ? Math.min(CHAMFER, thickness / 4) : 0;
    const made = new ExtrudeGeometry(shape, {
      depth: thickness - 2 * chamfer,
      bevelEnabled: chamfer > 0,
      bevelSize: chamfer,
      bevelOffset: -chamfer,
      bevelThickness: chamfer,
      bevelSegments: 1,
    });
    made.translate(0, 0, from - thickness + chamfer);
    return made;
  }, [outline, holes, from, thickness, polished]);
  const edges = useMemo(() => {
    const found = new EdgesGeometry(geometry, 35);
    const pairs = found.getAttribute('position').array;
    found.dispose();
    return pairs;
  }, [geometry]);
  const material = useOwned(() => (polished ? matt(colour, 0.42, 0.65) : matt(colour)), [colour, polished]);
  const pickable = useMemo((): Pickable | undefined => (pick ? { ref: () => pick } : undefined), [pick]);
  return (
    <>
      <mesh geometry={geometry} material={material} userData={pickable ? { pick: pickable } : {}} />
      <CutFace geometry={geometry} colour={colour} palette={palette} />
      {edge && <Lines pairs={edges} colour={edge} width={edgeWidth} opacity={0.7} />}
    </>
  );
}

type ThroatProps = {
  readonly port: string;
  readonly points: readonly Point2[];
  readonly depth: number;
  readonly palette: Palette;
};

/** The dark of the port behind its opening: the head is not drawn, and nobody should see through it. */
function Throat({ port, points, depth, palette }: ThroatProps) {
  const pick = useMemo((): Pickable => ({ ref: () => ({ kind: 'port', id: port }) }), [port]);
  const geometry = useOwned(
    () => new ShapeGeometry(new Shape(points.map(([x, y]) => new Vector2(x, y)))).translate(0, 0, 0.05 - depth),
    [points, depth],
  );
  const material = useOwned(() => new MeshBasicMaterial({ color: palette.throat }), [palette]);
  return <mesh geometry={geometry} material={material} userData={{ pick }} />;
}

type StudProps = {
  readonly own: { readonly flange: string; readonly index: number } | null;
  readonly foot: Vec3;
  readonly axis: Vec3;
  readonly side: Vec3;
  readonly diameter: number;
  readonly length: number;
  readonly bolt: boolean;
  /** From the flange's outer face down to the head. */
  readonly below: number;
  readonly palette: Palette;
};

/** About this many diameters of thread sit in the head, and a nut is this wide and high: common practice, to draw by. */
const ENGAGEMENT = 1.5;
const ACROSS_CORNERS = 1.85;
const NUT_HEIGHT = 0.85;

function Stud({ own, foot, axis, side, diameter, length, bolt, below, palette }: StudProps) {
  const { flange: id, index } = own ?? { flange: '', index: -1 };
  const ref = useMemo((): Ref => ({ kind: 'fastener', id, index }), [id, index]);
  const emphasis = useSession((s) => emphasisOf(ref, s.selection, s.hovered));
  const edge = emphasis === 'none' ? palette.ink : palette.accent;
  const userData = useMemo(() => (id ? { pick: { ref: () => ref } satisfies Pickable } : {}), [id, ref]);
  const nut = diameter * NUT_HEIGHT;
  const proud = bolt ? 0 : Math.max(nut + diameter * 0.25, length - diameter * ENGAGEMENT - below);
  const matrix = useMemo(() => {
    const up = cross(axis, side);
    return new Matrix4()
      .makeBasis(new Vector3(...side), new Vector3(...axis), new Vector3(...up).negate())
      .setPosition(...foot);
  }, [foot, axis, side]);
  const shank = useOwned(
    () => new CylinderGeometry(diameter / 2, diameter / 2, proud, 20).translate(0, proud / 2, 0),
    [diameter, proud],
  );
  const hex = useOwned(() => {
    const r = (diameter * ACROSS_CORNERS) / 2;
    return new CylinderGeometry(r, r, nut, 6).toNonIndexed().translate(0, nut / 2, 0);
  }, [diameter, nut]);
  const hexEdges = useMemo(() => {
    const found = new EdgesGeometry(hex, 25);
    const pairs = found.getAttribute('position').array;
    found.dispose();
    return pairs;
  }, [hex]);
  const steel = useOwned(() => matt(palette.steel, 0.4, 0.85), [palette]);
  const flat = useOwned(() => Object.assign(matt(palette.steel, 0.4, 0.85), { flatShading: true }), [palette]);
  return (
    <group matrix={matrix} matrixAutoUpdate={false}>
      {proud > 0 && <mesh geometry={shank} material={steel} userData={userData} />}
      <mesh geometry={hex} material={flat} userData={userData} />
      <CutFace geometry={hex} colour={palette.steel} palette={palette} />
      <Lines pairs={hexEdges} colour={edge} width={emphasis === 'none' ? 1 : 2.4} opacity={0.6} />
    </group>
  );
}

/** "M8", "M10 x 1.25" or "3/8-16": the thread's nominal diameter in mm; null where it is not understood. */
export function threadDiameter(thread: string): number | null {
  const metric = /^\s*M\s*(\d+(?:\.\d+)?)/i.exec(thread);
  if (metric) return Number(metric[1]);
  const inch = /^\s*(\d+)\s*\/\s*(\d+)/.exec(thread);
  return inch && Number(inch[2]) > 0 ? (25.4 * Number(inch[1])) / Number(inch[2]) : null;
}
