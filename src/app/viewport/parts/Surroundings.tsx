/**
 * What the header must keep clear of: glassy, edges faint, so that it recedes until it is asked about. The one selected
 * shows its clearance as a second skin around it.
 */
import { memo, useMemo } from 'react';
import {
  BackSide,
  BoxGeometry,
  BufferAttribute,
  BufferGeometry,
  CapsuleGeometry,
  DoubleSide,
  EdgesGeometry,
  Quaternion,
  Vector3,
} from 'three';
import { RoundedBoxGeometry } from 'three/addons/geometries/RoundedBoxGeometry.js';
import { distance, type Meshes, placeMesh, sub, type TriangleSoup, unit } from '../../../../geometry';
import type { Box, Capsule, MeshSurrounding, Surrounding } from '../../../../shared/design/types';
import { type Ref, useSession } from '../../session';
import { emphasisOf } from '../emphasis';
import { ghostMaterial } from '../gl/ghost';
import { Lines } from '../gl/Lines';
import { useOwned } from '../gl/owned';
import type { Pickable } from '../gl/pick';
import type { Palette } from '../palette';

/** Beyond this many corners a scan has more edges than a drawing can bear, and finding them takes too long. */
const MOST_EDGED = 150_000;

type Props<T extends Surrounding = Surrounding> = {
  readonly surrounding: T;
  readonly palette: Palette;
  /** 1 for a few; less where many overlap, so that the sum stays light. */
  readonly strength: number;
};

/** Dozens of glass boxes before one another would become a wall. */
export const strengthFor = (count: number) => Math.min(1, (8 / Math.max(1, count)) ** 0.7);

export const Ghost = memo(function Ghost({
  surrounding,
  meshes,
  palette,
  strength,
}: Props & { readonly meshes: Meshes }) {
  if (surrounding.shape === 'box') return <GhostBox surrounding={surrounding} palette={palette} strength={strength} />;
  if (surrounding.shape === 'capsule')
    return <GhostCapsule surrounding={surrounding} palette={palette} strength={strength} />;
  if (surrounding.shape === 'cylinder' || surrounding.shape === 'plane') return null;
  const soup = meshes.get(surrounding.file);
  return soup ? <GhostMesh surrounding={surrounding} soup={soup} palette={palette} strength={strength} /> : null;
});

function GhostBox(props: Props<Box>) {
  const { min, max, clearance = 0 } = props.surrounding;
  const size = useMemo(() => [0, 1, 2].map((i) => Math.abs(max[i]! - min[i]!)) as [number, number, number], [min, max]);
  const middle = useMemo(() => new Vector3(...min).add(new Vector3(...max)).multiplyScalar(0.5), [min, max]);
  const geometry = useOwned(() => new BoxGeometry(...size).translate(...middle.toArray()), [size, middle]);
  // Every point within the clearance of a box: the box grown by it, with corners of that radius.
  const halo = useOwned(() => {
    const [x, y, z] = size.map((s) => s + 2 * clearance) as [number, number, number];
    return new RoundedBoxGeometry(x, y, z, 5, clearance).translate(...middle.toArray());
  }, [size, middle, clearance]);
  return <Glass {...props} geometry={geometry} halo={clearance > 0 ? halo : null} />;
}

function GhostCapsule(props: Props<Capsule>) {
  const { a, b, radius, clearance = 0 } = props.surrounding;
  const make = useMemo(() => {
    const turn = new Quaternion().setFromUnitVectors(new Vector3(0, 1, 0), new Vector3(...unit(sub(b, a))));
    const middle = new Vector3(...a).add(new Vector3(...b)).multiplyScalar(0.5);
    return (r: number) =>
      new CapsuleGeometry(r, distance(a, b), 10, 40).applyQuaternion(turn).translate(...middle.toArray());
  }, [a, b]);
  const geometry = useOwned(() => make(radius), [make, radius]);
  const halo = useOwned(() => make(radius + clearance), [make, radius, clearance]);
  return <Glass {...props} geometry={geometry} halo={clearance > 0 ? halo : null} smooth />;
}

function GhostMesh(props: Props<MeshSurrounding> & { readonly soup: TriangleSoup }) {
  const { surrounding, soup } = props;
  const geometry = useOwned(() => {
    const made = new BufferGeometry();
    made.setAttribute('position', new BufferAttribute(placeMesh(surrounding, soup), 3));
    made.computeVertexNormals();
    return made;
  }, [surrounding, soup]);
  return <Glass {...props} geometry={geometry} halo={null} />;
}

type GlassProps = Props & {
  readonly geometry: BufferGeometry;
  readonly halo: BufferGeometry | null;
  /** Round all over: it has a rim and no edges. */
  readonly smooth?: boolean;
};

function Glass({ surrounding, palette, strength, geometry, halo, smooth = false }: GlassProps) {
  const own = useMemo((): Ref => ({ kind: 'surrounding', id: surrounding.id }), [surrounding.id]);
  const emphasis = useSession((s) => emphasisOf(own, s.selection, s.hovered));
  const lit = emphasis !== 'none';
  // Hovering lights the edges alone: a floor or a wall fills the picture, and the pointer is nearly always over one.
  const filled = emphasis === 'selected' || (smooth && lit);
  const colour = filled ? palette.accent : palette.ghost;
  const k = smooth && lit ? 1.6 : filled ? 1 : strength;
  // Faces toward the eye would lie over the header: only the far walls of a body are tinted, both of something thin.
  const material = smooth
    ? ghostMaterial(colour, palette.ghostFace * k, Math.min(0.8, palette.ghostRim * 3.2 * k), DoubleSide)
    : ghostMaterial(colour, palette.ghostFace * 1.6 * k, palette.ghostRim * k, BackSide);
  const skin = ghostMaterial(palette.accent, 0.012, 0.4, DoubleSide);
  const edges = useMemo(() => {
    if (smooth || geometry.getAttribute('position').count > MOST_EDGED) return [];
    const found = new EdgesGeometry(geometry, 28);
    const pairs = found.getAttribute('position').array;
    found.dispose();
    return pairs;
  }, [geometry, smooth]);
  const pick = useMemo((): Pickable => ({ ref: () => own, glass: true }), [own]);
  return (
    <group>
      <mesh geometry={geometry} material={material} renderOrder={2} userData={{ pick }} />
      <Lines
        pairs={edges}
        colour={lit ? palette.accent : palette.ghost}
        width={lit ? 1.6 : 1}
        opacity={lit ? 0.95 : palette.ghostEdge * Math.max(strength, 0.55)}
      />
      {emphasis === 'selected' && halo && <mesh geometry={halo} material={skin} renderOrder={3} />}
    </group>
  );
}
