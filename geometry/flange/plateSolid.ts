/**
 * A plate as a closed solid in its own frame: outer face at z = 0, the head's side at −thickness, steps sunk from the outer face.
 * Vertices lie on the true curves and are shared between faces and walls. Arcs are cut finer than a tube's, because a plate's
 * volume is held to a thousandth. mm, mm³.
 */
import { circleLoop, type Loop, loopArea, type Point2, sampleLoop } from '../plane/loop';
import type { Mesh } from '../solid/mesh';
import { planeRegion } from '../solid/planeRegion';
import { DEFAULT_CHORD_ERROR } from '../solid/tube';
import type { PlatePlan } from './plan';

const CHORD_ERROR = DEFAULT_CHORD_ERROR / 4;

type Plate = Pick<PlatePlan, 'thickness' | 'outline' | 'openings' | 'steps' | 'holes'>;

/** Of the true curves, in closed form. */
export function plateVolume({ thickness, outline, openings, steps, holes }: Plate): number {
  const openingOf = (port: string) => loopArea(openings.find((o) => o.port === port)!.loop);
  const through = openings.reduce((sum, o) => sum + loopArea(o.loop), 0);
  const drilled = holes.reduce((sum, h) => sum + (Math.PI * h.diameter ** 2) / 4, 0);
  const milled = steps.reduce((sum, { port, loop, depth }) => sum + depth * (loopArea(loop) - openingOf(port)), 0);
  return thickness * (loopArea(outline) - through - drilled) - milled;
}

export function plateSolid(plate: Plate): { mesh: Mesh; edges: Float32Array } {
  const builder = new Builder();
  const { thickness } = plate;
  const outline = builder.wall(plate.outline, -thickness, 0);
  const top: number[][] = [outline.top];
  const bottom: number[][] = [outline.bottom];
  for (const { centre, diameter } of plate.holes) {
    const hole = builder.wall(circleLoop(centre, diameter / 2), -thickness, 0, true);
    top.push(hole.top);
    bottom.push(hole.bottom);
  }
  for (const { port, loop } of plate.openings) {
    const step = plate.steps.find((s) => s.port === port);
    const opening = builder.wall(loop, -thickness, step ? -step.depth : 0, true);
    bottom.push(opening.bottom);
    if (!step) {
      top.push(opening.top);
      continue;
    }
    const sunk = builder.wall(step.loop, -step.depth, 0, true);
    top.push(sunk.top);
    builder.face([sunk.bottom.toReversed(), opening.top], true);
  }
  builder.face(top, true);
  builder.face(bottom, false);
  return builder.done();
}

/** Holes' rings run clockwise, so that a face's rings all have its metal to their left. */
class Builder {
  private readonly points: Point2[] = [];
  private readonly heights: number[] = [];
  private readonly triangles: number[] = [];
  private readonly lines: number[] = [];

  wall(loop: Loop, low: number, high: number, hole = false): { top: number[]; bottom: number[] } {
    const sampled = sampleLoop(loop, CHORD_ERROR);
    const points = hole ? sampled.toReversed() : sampled;
    const bottom = points.map((p) => this.vertex(p, low));
    const top = points.map((p) => this.vertex(p, high));
    for (const [i, a] of bottom.entries()) {
      const j = (i + 1) % bottom.length;
      const [b, c, d] = [bottom[j]!, top[j]!, top[i]!];
      this.triangles.push(a, b, c, a, c, d);
      this.line(a, b);
      this.line(d, c);
    }
    return { top, bottom };
  }

  /** @param up whether it is seen from above */
  face(rings: readonly number[][], up: boolean): void {
    for (const [a, b, c] of planeRegion(this.points, rings)) this.triangles.push(...(up ? [a, b, c] : [a, c, b]));
  }

  private vertex(p: Point2, z: number): number {
    this.points.push(p);
    this.heights.push(z);
    return this.points.length - 1;
  }

  private line(a: number, b: number): void {
    for (const i of [a, b]) this.lines.push(...this.points[i]!, this.heights[i]!);
  }

  done(): { mesh: Mesh; edges: Float32Array } {
    const positions = Float64Array.from(this.points.flatMap(([x, y], i) => [x, y, this.heights[i]!]));
    return { mesh: { positions, triangles: Uint32Array.from(this.triangles) }, edges: Float32Array.from(this.lines) };
  }
}
