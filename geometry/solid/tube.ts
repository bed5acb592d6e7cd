/**
 * A runner as a hollow, closed solid: an annulus swept along the centerline in rotation-minimising frames, its two ends
 * plane and square. Ring vertices lie on the true circles (so diameters measure right), and the mesh is inscribed: its
 * volume falls short of wall area × length by an amount known in closed form, `tubeMeshVolume`. mm, design frame.
 */
import { wallArea } from '../../shared/stock/tubes';
import type { Vec3 } from '../../shared/vec3';
import type { Centerline } from '../curve/centerline';
import { type Frame, frames } from '../curve/frames';
import { LEAST_MESH_STEP, STRAIGHT_TOLERANCE } from '../tolerance';
import type { Mesh } from './mesh';
import { connectRings } from './rings';
import { arcSteps, ringSides, tubeStations } from './sections';

export type TubeShape = {
  readonly outsideDiameter: number;
  readonly wall: number;
  /** The farthest the mesh may stray from the true surface, mm. Default 0.05. */
  readonly chordError?: number;
  /** Where the first vertex of each ring points at the start; any direction square to it by default. */
  readonly up?: Vec3;
};

export const DEFAULT_CHORD_ERROR = 0.05;

/** What keeps a centerline from being swept as this tube, with the remedy; null where nothing does. */
export function tubeObstacle(line: Centerline, shape: TubeShape): string | null {
  const { outsideDiameter, wall, chordError = DEFAULT_CHORD_ERROR } = shape;
  if (!(outsideDiameter > 0)) return `its outside diameter is ${outsideDiameter} mm; it must be more than 0`;
  if (!(wall > 0 && wall < outsideDiameter / 2))
    return `its wall is ${wall} mm; it must lie between 0 and half the outside diameter, ${outsideDiameter / 2} mm`;
  if (!(chordError > 0)) return `the chord error is ${chordError} mm; it must be more than 0`;
  const tight = line.radii.findIndex((r) => !(r >= outsideDiameter / 2));
  if (tight >= 0)
    return `bend ${tight + 1} has a radius of ${line.radii[tight]} mm; a tube cannot bend tighter than half its outside diameter, ${outsideDiameter / 2} mm`;
  const short = line.straights.findIndex((s) => !(s >= -STRAIGHT_TOLERANCE));
  if (short >= 0)
    return `straight ${short + 1} comes out at ${line.straights[short]!.toFixed(2)} mm: the bends at its ends need that much more room; move their points apart or bend less`;
  if (!(line.length > LEAST_MESH_STEP)) return 'it has no length; move its ends apart';
  return null;
}

/**
 * Sweeps the tube. Watertight, outward oriented, no triangle without area, also after rounding to single precision.
 * @throws RangeError where `tubeObstacle` says why it cannot be swept
 */
export function tubeSolid(line: Centerline, shape: TubeShape): Mesh {
  const obstacle = tubeObstacle(line, shape);
  if (obstacle) throw new RangeError(`This tube cannot be made solid: ${obstacle}`);
  const { outer, inner, sagitta, sides } = resolve(shape);
  const rings = frames(tubeStations(line, outer, sagitta), shape.up);
  const half = rings.length * sides;
  const positions = new Float64Array(3 * 2 * half);
  writeRings(positions, 0, rings, sides, outer);
  writeRings(positions, half, rings, sides, inner);
  return { positions, triangles: connectRings(rings.length, sides, half, standIns(positions, sides)) };
}

/**
 * The mesh's volume, exactly. Each ring is a pair of regular N-gons, area A = (N/2)·sin(2π/N)·(ro² − ri²), centroid on
 * the centerline. A straight holds A × length. Between two rings of a bend, turned by δ about its axis, a point at
 * distance ρ from that axis runs along a chord, so the step holds ∫ρ·sin δ dA = A·R·sin δ where Pappus has A·R·δ.
 */
export function tubeMeshVolume(line: Centerline, shape: TubeShape): number {
  const { outer, inner, sagitta, sides } = resolve(shape);
  const area = (sides / 2) * Math.sin((2 * Math.PI) / sides) * (outer ** 2 - inner ** 2);
  const along = line.segments.map((s) => {
    if (s.kind === 'straight') return s.length;
    const steps = arcSteps(s.radius, outer, s.angle, sagitta);
    return s.radius * steps * Math.sin(s.angle / steps);
  });
  return area * along.reduce((sum, length) => sum + length, 0);
}

/** Wall area × arc length: the volume of metal by Pappus' theorem. */
export function tubeVolume(line: Centerline, shape: Pick<TubeShape, 'outsideDiameter' | 'wall'>): number {
  return wallArea(shape) * line.length;
}

/** How far the mesh's volume falls short of the true one, mm³. */
export const tubeVolumeDeficit = (line: Centerline, shape: TubeShape): number =>
  tubeVolume(line, shape) - tubeMeshVolume(line, shape);

function resolve({ outsideDiameter, wall, chordError = DEFAULT_CHORD_ERROR }: TubeShape) {
  const outer = outsideDiameter / 2;
  const sagitta = chordError / 2;
  return { outer, inner: outer - wall, sagitta, sides: ringSides(outer, sagitta) };
}

function writeRings(positions: Float64Array, first: number, rings: readonly Frame[], sides: number, radius: number) {
  let at = 3 * first;
  for (const { position: p, normal: n, side } of rings) {
    for (let i = 0; i < sides; i++) {
      const c = radius * Math.cos((2 * Math.PI * i) / sides);
      const s = radius * Math.sin((2 * Math.PI * i) / sides);
      positions[at++] = p[0] + c * n[0] + s * side[0];
      positions[at++] = p[1] + c * n[1] + s * side[1];
      positions[at++] = p[2] + c * n[2] + s * side[2];
    }
  }
}

/**
 * For each vertex the one that stands for it. Where a bend is as tight as the tube's own radius, the rings meet at its
 * inside: vertices there that come to lie on one another become one, so that no sliver is left between them.
 */
function standIns(positions: Float64Array, sides: number): Uint32Array {
  const standIn = Uint32Array.from({ length: positions.length / 3 }, (_, v) => v);
  for (let v = sides; v < standIn.length / 2; v++) {
    const before = standIn[v - sides]!;
    const dx = positions[3 * v]! - positions[3 * before]!;
    const dy = positions[3 * v + 1]! - positions[3 * before + 1]!;
    const dz = positions[3 * v + 2]! - positions[3 * before + 2]!;
    if (Math.hypot(dx, dy, dz) < LEAST_MESH_STEP) standIn[v] = before;
  }
  return standIn;
}
