/**
 * A flange's studs and bolts with their nuts, all of them drawn at once: there may be a dozen. Each is picked, and marked,
 * alone.
 */
import { useMemo } from 'react';
import { type BufferGeometry, CylinderGeometry, type Material, Matrix4, Vector3 } from 'three';
import { cross } from '../../../../geometry';
import { MM_PER_INCH } from '../../../../shared/units';
import { type Ref, useSession } from '../../session';
import { CutFace } from '../cuts/CutFace';
import { emphasisOf } from '../emphasis';
import { useJoined } from '../gl/joined';
import { Lines } from '../gl/Lines';
import { useOwned } from '../gl/owned';
import type { Pickable } from '../gl/pick';
import { matt } from '../gl/satin';
import { sharpEdges } from '../gl/sharpEdges';
import { fromPlate, type Plate } from '../model/plates';
import type { Palette } from '../palette';

/** About this many diameters of thread sit in the head, and a nut is this wide and high: common practice, to draw by. */
const ENGAGEMENT = 1.5;
const ACROSS_CORNERS = 1.85;
const NUT_HEIGHT = 0.85;

type Props = {
  readonly plate: Plate;
  readonly flange: string;
  /** From the flange's outer face down to the head. */
  readonly below: number;
  /** Nuts and bolts are off: studs alone stand in the head. */
  readonly bare: boolean;
  readonly palette: Palette;
};

export function Studs({ bare, ...props }: Props) {
  return bare ? <BareStuds {...props} /> : <TightStuds {...props} />;
}

type StudsProps = Omit<Props, 'bare'>;

function BareStuds({ plate, flange, below, palette }: StudsProps) {
  const studs = useMemo(
    () =>
      plate.fasteners
        .map((_, index) => drawn(plate, index, { kind: 'fastener', id: flange, index }, below, true))
        .filter(({ shank }) => shank),
    [plate, flange, below],
  );
  const steel = useOwned(() => matt(palette.steel, 0.4, 0.85), [palette]);
  return studs.length > 0 ? <ProudShanks studs={studs} steel={steel} /> : null;
}

function TightStuds({ plate, flange, below, palette }: StudsProps) {
  const studs = useMemo(
    () => plate.fasteners.map((_, index) => drawn(plate, index, { kind: 'fastener', id: flange, index }, below)),
    [plate, flange, below],
  );
  const emphases = useSession((s) => studs.map(({ ref }) => emphasisOf(ref, s.selection, s.hovered)).join());
  const [marked, plain] = useMemo(() => {
    const isMarked = emphases.split(',').map((emphasis) => emphasis !== 'none');
    const rest = studs.filter((_, i) => !isMarked[i]);
    return [studs.filter((_, i) => isMarked[i]), rest.flatMap(({ edges }) => edges)];
  }, [studs, emphases]);
  const nuts = useJoined(() => studs.map(({ nut, ref }) => ({ geometry: nut(), ref })), [studs]);
  const steel = useOwned(() => matt(palette.steel, 0.4, 0.85), [palette]);
  const userData = useMemo(() => ({ pick: { ref: nuts.ref } satisfies Pickable }), [nuts]);
  return (
    <>
      <mesh geometry={nuts.geometry} material={steel} userData={userData} />
      <CutFace geometry={nuts.geometry} colour={palette.steel} palette={palette} />
      <Shanks studs={studs} steel={steel} />
      <Lines pairs={plain} colour={palette.ink} width={1} opacity={0.6} />
      {marked.map(({ edges, ref }) => (
        <Lines key={ref.index} pairs={edges} colour={palette.accent} width={2.4} opacity={0.6} />
      ))}
    </>
  );
}

type ShanksProps = { readonly studs: readonly Drawn[]; readonly steel: Material };

/** What stands out of the nuts; a bolt has none of it. */
function Shanks({ studs, steel }: ShanksProps) {
  const proud = useMemo(() => studs.filter(({ shank }) => shank), [studs]);
  return proud.length > 0 ? <ProudShanks studs={proud} steel={steel} /> : null;
}

function ProudShanks({ studs, steel }: ShanksProps) {
  const shanks = useJoined(() => studs.map(({ shank, ref }) => ({ geometry: shank!(), ref })), [studs]);
  const userData = useMemo(() => ({ pick: { ref: shanks.ref } satisfies Pickable }), [shanks]);
  return <mesh geometry={shanks.geometry} material={steel} userData={userData} />;
}

type Drawn = {
  readonly ref: Extract<Ref, { kind: 'fastener' }>;
  /** Solids in place, made anew for whoever takes them. */
  nut(): BufferGeometry;
  readonly shank: (() => BufferGeometry) | null;
  /** Of the nut, as pairs of points. */
  readonly edges: readonly number[];
};

/** @param whole the shank from the head on, not only what stands out of the nut */
function drawn(plate: Plate, index: number, ref: Drawn['ref'], below: number, whole = false): Drawn {
  const { fastener, at } = plate.fasteners[index]!;
  const diameter = threadDiameter(fastener.thread) ?? fastener.hole * 0.9;
  const high = diameter * NUT_HEIGHT;
  const proud =
    fastener.kind === 'stud'
      ? Math.max(high + diameter * 0.25, (fastener.length ?? 0) - diameter * ENGAGEMENT - below)
      : 0;
  const place = new Matrix4()
    .makeBasis(
      new Vector3(...plate.across),
      new Vector3(...plate.normal),
      new Vector3(...cross(plate.across, plate.normal)),
    )
    .setPosition(...fromPlate(plate, at));
  const nut = () => {
    const r = (diameter * ACROSS_CORNERS) / 2;
    // Corners apart, so that each face is flat.
    const made = new CylinderGeometry(r, r, high, 6)
      .toNonIndexed()
      .translate(0, high / 2, 0)
      .applyMatrix4(place);
    made.computeVertexNormals();
    return made;
  };
  const root = whole ? below : 0;
  const shank = () =>
    new CylinderGeometry(diameter / 2, diameter / 2, proud + root, 20)
      .translate(0, (proud - root) / 2, 0)
      .applyMatrix4(place);
  const solid = nut();
  const edges = Array.from(sharpEdges(solid, 25));
  solid.dispose();
  return { ref, nut, shank: proud > 0 ? shank : null, edges };
}

/** "M8", "M10 x 1.25" or "3/8-16": the thread's nominal diameter in mm; null where it is not understood. */
export function threadDiameter(thread: string): number | null {
  const metric = /^\s*M\s*(\d+(?:\.\d+)?)/i.exec(thread);
  if (metric) return Number(metric[1]);
  const inch = /^\s*(\d+)\s*\/\s*(\d+)/.exec(thread);
  return inch && Number(inch[2]) > 0 ? (MM_PER_INCH * Number(inch[1])) / Number(inch[2]) : null;
}
