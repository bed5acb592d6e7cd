/**
 * Adds what stands around a header: a box, a bar, a cylinder or a plane where it was drawn, or where it is seen at once and
 * touches nothing of the ports; or a mesh as it lies in its file. mm.
 */
import type { Vec3 } from '../../vec3';
import type { Box, Capsule, Cylinder, Design, MeshSurrounding, Plane, Surrounding } from '../types';
import { type Added, middle, minus, plus } from './add';
import { checked } from './edited';
import { freeId } from './things';

/** What is added before anything is known of it, mm. */
export const FIRST_CLEARANCE = 10;

export type NewShape = 'box' | 'capsule' | 'cylinder' | 'plane';
/** A mesh with what is known of how it lies; without a unit it is taken as mm. */
export type NewMesh = Omit<Partial<MeshSurrounding>, 'id' | 'shape'> & Pick<MeshSurrounding, 'file'>;

/** A shape with its places, by all but its name. */
export type PlacedShape = Omit<Box, 'id'> | Omit<Capsule, 'id'> | Omit<Cylinder, 'id'> | Omit<Plane, 'id'>;

const STEMS: Readonly<Record<NewShape, string>> = {
  box: 'box ',
  capsule: 'bar ',
  cylinder: 'cylinder ',
  plane: 'plane ',
};

/**
 * @param what by its name: something in front of the ports, a plane beyond all of the header and facing it. With its places,
 * it stands there; a mesh as it lies in its file
 */
export function addSurrounding(design: Design, what: NewShape | PlacedShape | NewMesh): Added {
  const all = design.surroundings ?? [];
  const shape = typeof what === 'string' ? placedShape(design, what) : what;
  const id = freeId(
    all.map((thing) => thing.id),
    'file' in shape ? 'scan ' : STEMS[shape.shape],
  );
  const surrounding: Surrounding =
    'file' in shape
      ? { id, unit: 'mm', clearance: FIRST_CLEARANCE, ...shape, shape: 'mesh' }
      : { id, clearance: FIRST_CLEARANCE, ...shape };
  return {
    edited: checked({ ...design, surroundings: [...all, surrounding] }),
    thing: { kind: 'surrounding', id },
  };
}

/** How far out of the ports something new begins, and how far beyond the header a plane stands. */
const OUT_OF_PORTS = 150;
const BEYOND = 100;

function placedShape(design: Design, shape: NewShape): PlacedShape {
  const ports = design.ports.map((port) => port.position);
  const out = outOfPorts(design);
  const from = middle(ports);
  const at = (along: number, up: number): Vec3 => plus(from, [along * out[0], along * out[1], along * out[2] + up]);
  switch (shape) {
    case 'box': {
      const [x, y, z] = at(OUT_OF_PORTS + 50, 100);
      return { shape, min: [x - 50, y - 50, z - 50], max: [x + 50, y + 50, z + 50] };
    }
    case 'capsule':
      return { shape, a: at(OUT_OF_PORTS, 60), b: at(OUT_OF_PORTS + 250, 60), radius: 12 };
    case 'cylinder':
      return { shape, a: at(OUT_OF_PORTS, 70), b: at(OUT_OF_PORTS + 120, 70), radius: 38 };
    case 'plane': {
      const places = [
        ...ports,
        ...design.merges.map((m) => m.position),
        ...design.runners.flatMap((r) => r.points ?? []),
      ];
      const far = places.reduce((most, p) => {
        const off = minus(p, from);
        return Math.max(most, off[0] * out[0] + off[1] * out[1] + off[2] * out[2]);
      }, OUT_OF_PORTS);
      return { shape, position: at(far + BEYOND, 0), normal: [0 - out[0], 0 - out[1], 0 - out[2]] };
    }
  }
}

/** The way the ports look, all together, level where they lean; +Y where they look every way or there are none. */
function outOfPorts(design: Design): Vec3 {
  const [x, y] = design.ports.reduce<Vec3>((sum, port) => plus(sum, port.direction), [0, 0, 0]);
  const size = Math.hypot(x, y);
  return size > 1e-3 * design.ports.length && size > 0 ? [x / size, y / size, 0] : [0, 1, 0];
}
