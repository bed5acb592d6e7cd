/** A closed profile turned about z, as a closed solid; its volume by Pappus. Profile points are [distance from z, z], counter-clockwise. mm. */
import type { Point2 } from '../plane/loop';
import type { Mesh } from './mesh';
import { ringSides } from './sections';
import { DEFAULT_CHORD_ERROR } from './tube';

/** @param profile nowhere on the axis */
export function revolvedSolid(profile: readonly Point2[], chordError = DEFAULT_CHORD_ERROR): Mesh {
  const sides = ringSides(Math.max(...profile.map(([r]) => r)), chordError);
  const n = profile.length;
  const positions = new Float64Array(3 * n * sides);
  const triangles = new Uint32Array(6 * n * sides);
  for (let i = 0; i < sides; i++) {
    const angle = (2 * Math.PI * i) / sides;
    const [c, s] = [Math.cos(angle), Math.sin(angle)];
    const next = ((i + 1) % sides) * n;
    profile.forEach(([r, z], k) => {
      positions.set([r * c, r * s, z], 3 * (i * n + k));
      const [a, b] = [i * n + k, i * n + ((k + 1) % n)];
      const [d, e] = [next + k, next + ((k + 1) % n)];
      triangles.set([a, d, e, a, e, b], 6 * (i * n + k));
    });
  }
  return { positions, triangles };
}

/** 2π·∫ r dA over the polygon. */
export function revolvedVolume(profile: readonly Point2[]): number {
  let moment = 0;
  profile.forEach(([r, z], k) => {
    const [u, w] = profile[(k + 1) % profile.length]!;
    moment += ((r + u) * (r * w - u * z)) / 6;
  });
  return 2 * Math.PI * moment;
}

/** Circles at the profile's corners that are meant, as pairs of points. */
export function circlesOf(corners: readonly Point2[], sides = 96): Float32Array {
  const pairs: number[] = [];
  for (const [r, z] of corners)
    for (let i = 0; i < sides; i++)
      for (const k of [i, i + 1]) {
        const a = (2 * Math.PI * k) / sides;
        pairs.push(r * Math.cos(a), r * Math.sin(a), z);
      }
  return Float32Array.from(pairs);
}
