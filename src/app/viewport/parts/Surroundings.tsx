/** What the header must keep clear of, each shape as glass: boxes, bars, cylinders here; planes and meshes beside. */
import { memo, useMemo } from 'react';
import {
  BoxGeometry,
  type BufferGeometry,
  CapsuleGeometry,
  CylinderGeometry,
  LatheGeometry,
  Quaternion,
  Vector2,
  Vector3,
} from 'three';
import { RoundedBoxGeometry } from 'three/addons/geometries/RoundedBoxGeometry.js';
import { distance, type Meshes, sub, unit } from '../../../../geometry';
import type { Box, Capsule, Cylinder, Surrounding } from '../../../../shared/design/types';
import { useHand } from '../../hand/hand';
import type { Ball } from '../camera/fit';
import { useOwned } from '../gl/owned';
import type { Palette } from '../palette';
import { GhostMesh } from './GhostMesh';
import { GhostPlane } from './GhostPlane';
import { type GhostProps, Glass } from './Glass';

/** Dozens of glass boxes before one another would become a wall. */
export const strengthFor = (count: number) => Math.min(1, (8 / Math.max(1, count)) ** 0.7);

type Props = {
  readonly surrounding: Surrounding;
  readonly meshes: Meshes;
  readonly palette: Palette;
  readonly strength: number;
  /** The header: planes are drawn before it. */
  readonly around: Ball;
};

export const Ghost = memo(function Ghost({ surrounding: own, meshes, palette, strength, around }: Props) {
  const surrounding = useHand((s) => (s.floating?.id === own.id ? s.floating : own));
  const look = { palette, strength };
  switch (surrounding.shape) {
    case 'box':
      return <GhostBox surrounding={surrounding} {...look} />;
    case 'capsule':
      return <GhostCapsule surrounding={surrounding} {...look} />;
    case 'cylinder':
      return <GhostCylinder surrounding={surrounding} {...look} />;
    case 'plane':
      return <GhostPlane surrounding={surrounding} around={around} {...look} />;
    case 'mesh': {
      const soup = meshes.get(surrounding.file);
      return soup ? <GhostMesh surrounding={surrounding} soup={soup} {...look} /> : null;
    }
  }
});

function GhostBox(props: GhostProps<Box>) {
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

/** Turns what is made about +Y onto the axis from a to b, its middle between them. */
function useAlong({ a, b }: Pick<Capsule, 'a' | 'b'>): (made: BufferGeometry) => BufferGeometry {
  return useMemo(() => {
    const turn = new Quaternion().setFromUnitVectors(new Vector3(0, 1, 0), new Vector3(...unit(sub(b, a))));
    const middle = new Vector3(...a).add(new Vector3(...b)).multiplyScalar(0.5);
    return (made) => made.applyQuaternion(turn).translate(...middle.toArray());
  }, [a, b]);
}

function GhostCapsule(props: GhostProps<Capsule>) {
  const { a, b, radius, clearance = 0 } = props.surrounding;
  const along = useAlong(props.surrounding);
  const make = useMemo(() => {
    const length = distance(a, b);
    return (r: number) => along(new CapsuleGeometry(r, length, 10, 40));
  }, [a, b, along]);
  const geometry = useOwned(() => make(radius), [make, radius]);
  const halo = useOwned(() => make(radius + clearance), [make, radius, clearance]);
  return <Glass {...props} geometry={geometry} halo={clearance > 0 ? halo : null} smooth />;
}

function GhostCylinder(props: GhostProps<Cylinder>) {
  const { a, b, radius, clearance = 0 } = props.surrounding;
  const along = useAlong(props.surrounding);
  const length = distance(a, b);
  const geometry = useOwned(() => along(new CylinderGeometry(radius, radius, length, 48)), [along, radius, length]);
  // Every point within the clearance of a cylinder: grown by it, its rims rounded by that radius.
  const halo = useOwned(
    () => along(new LatheGeometry(roundedRim(radius, length / 2, clearance), 48)),
    [along, radius, length, clearance],
  );
  return <Glass {...props} geometry={geometry} halo={clearance > 0 ? halo : null} smooth edged />;
}

const RIM_STEPS = 6;

/** Half the section of a cylinder grown by `c`, from the axis below to the axis above. */
function roundedRim(radius: number, half: number, c: number): Vector2[] {
  const rim = (from: number, y: number): Vector2[] =>
    Array.from({ length: RIM_STEPS + 1 }, (_, k) => {
      const angle = from + (k * Math.PI) / 2 / RIM_STEPS;
      return new Vector2(radius + c * Math.cos(angle), y + c * Math.sin(angle));
    });
  return [new Vector2(0, -half - c), ...rim(-Math.PI / 2, -half), ...rim(0, half), new Vector2(0, half + c)];
}
