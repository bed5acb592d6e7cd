/**
 * Several parts as one surface, each in its place: what belongs together costs the graphics card one piece of work. The walls
 * seen from outside come first, so that one rim goes round all of them. mm, in the design's frame.
 */
import { addScaled, dot, fromFrame, type PartFrame, partFrame } from '../../../../geometry';
import type { Vec3 } from '../../../../shared/vec3';
import type { Shape, ShownPart } from '../../made/shape';

export type JoinedShapes = Pick<Shape, 'positions' | 'normals' | 'shades' | 'indices' | 'outerCount' | 'edges'>;

export function joinShapes(parts: readonly Pick<ShownPart, 'shape' | 'pose'>[]): JoinedShapes {
  const sum = (of: (shape: Shape) => number) => parts.reduce((so, { shape }) => so + of(shape), 0);
  const positions = new Float32Array(sum((s) => s.positions.length));
  const normals = new Float32Array(positions.length);
  const shades = new Uint8Array(positions.length);
  const indices = new Uint32Array(sum((s) => s.indices.length));
  const edges = new Float32Array(sum((s) => s.edges.length));
  const outerCount = sum((s) => s.outerCount);
  let [corner, outer, inner, line] = [0, 0, outerCount, 0];
  for (const { shape, pose } of parts) {
    const frame = partFrame(pose);
    const turned: PartFrame = [frame[0], frame[1], frame[2], [0, 0, 0]];
    write(positions, 3 * corner, shape.positions, frame);
    write(normals, 3 * corner, shape.normals, turned);
    write(edges, line, shape.edges, frame);
    shades.set(shape.shades, 3 * corner);
    for (let i = 0; i < shape.indices.length; i++)
      indices[i < shape.outerCount ? outer++ : inner++] = corner + shape.indices[i]!;
    corner += shape.positions.length / 3;
    line += shape.edges.length;
  }
  return { positions, normals, shades, indices, outerCount, edges };
}

function write(to: Float32Array, at: number, from: Float32Array, frame: PartFrame): void {
  for (let i = 0; i < from.length; i += 3) to.set(fromFrame(frame, [from[i]!, from[i + 1]!, from[i + 2]!]), at + i);
}

/** The middle of a part's box, and the box's corners. */
export const middleOfPart = ({ shape, pose }: Pick<ShownPart, 'shape' | 'pose'>): Vec3 =>
  fromFrame(partFrame(pose), shape.middle);

export function cornersOfPart({ shape: { middle, half }, pose }: Pick<ShownPart, 'shape' | 'pose'>): Vec3[] {
  const frame = partFrame(pose);
  return [-1, 1].flatMap((x) =>
    [-1, 1].flatMap((y) =>
      [-1, 1].map((z) => fromFrame(frame, [middle[0] + x * half[0], middle[1] + y * half[1], middle[2] + z * half[2]])),
    ),
  );
}

/** Places at a part's sides, a distance off its box: those first that lie the way it is going. */
export function besidePart(part: Pick<ShownPart, 'shape' | 'pose'>, way: Vec3, off: number): Vec3[] {
  const { half } = part.shape;
  const [x, y] = partFrame(part.pose);
  const from = middleOfPart(part);
  const sides = [-1, 1].flatMap((sign) => [
    { axis: x, by: sign * (half[0] + off) },
    { axis: y, by: sign * (half[1] + off) },
  ]);
  return sides
    .sort((a, b) => dot(b.axis, way) * Math.sign(b.by) - dot(a.axis, way) * Math.sign(a.by))
    .map(({ axis, by }) => addScaled(from, axis, by));
}
