/**
 * The lines a header is drawn with, in the eye's frame, before anything is hidden: both edges of each tube as the eye sees them,
 * rims of collectors, outlines and holes of flanges. And the bodies that hide them. mm.
 */
import {
  add,
  addScaled,
  collectorPlan,
  cross,
  type Edge,
  edges,
  flangePlan,
  fromFrame,
  type Header,
  type Loop,
  type Pose,
  partFrame,
  pointOnEdge,
  type ResolvedMerge,
  type Station,
  sampleCenterline,
  scale,
  sub,
  unit,
} from '../../../../geometry';
import type { Vec3 } from '../../../../shared/vec3';
import type { Bodies, Face, Rod } from './bodies';
import { seen, type View } from './view';

export type Lines = { readonly lines: readonly (readonly Vec3[])[]; readonly bodies: Bodies };

/** Chords of bends stray this far at most, mm: of a drawing, and where only a look is taken. */
export const FINE = 0.05;
export const ROUGH = 1.5;
const AROUND = 48;
const CONE_SLICES = 8;

export function headerLines(header: Header, view: View, sagitta = FINE): Lines {
  const parts = [
    ...header.runners.map((r) =>
      r.centerline ? tubeAlong(sampleCenterline(r.centerline, sagitta), r.tubeRadius, view) : NOTHING,
    ),
    ...[...header.merges.values()].map((merge) => collector(header, merge, view)),
    ...(header.design.flanges ?? []).flatMap((flange) =>
      flangePlan(header, flange).plates.map((plate) =>
        plateLines(
          plate.pose,
          plate.outline,
          plate.holes.map(({ centre, diameter }) => ({ centre, radius: diameter / 2 })),
          plate.thickness,
          view,
        ),
      ),
    ),
  ];
  return {
    lines: parts.flatMap((p) => p.lines),
    bodies: { rods: parts.flatMap((p) => p.bodies.rods), faces: parts.flatMap((p) => p.bodies.faces) },
  };
}

const NOTHING: Lines = { lines: [], bodies: { rods: [], faces: [] } };

/** Both edges: a tube's radius off its middle, square to it and to the eye. */
function tubeAlong(stations: readonly Station[], radius: number, view: View): Lines {
  const middle = stations.map((s) => seen(view, s.position));
  const ways = stations.map((s) => seen(view, s.tangent));
  const bare = tube(middle, ways.map(sideways), radius);
  const rim = (i: number): Vec3[] => ring({ centre: middle.at(i)!, axis: ways.at(i)! }, radius);
  return { ...bare, lines: [...bare.lines, rim(0), rim(-1)] };
}

function tube(middle: readonly Vec3[], aside: readonly Vec3[], radius: number): Lines {
  return {
    lines: [1, -1].map((side) => middle.map((p, i) => addScaled(p, aside[i]!, side * radius))),
    bodies: { rods: middle.slice(1).map((to, i): Rod => ({ from: middle[i]!, to, radius })), faces: [] },
  };
}

/** One that runs straight at the eye has no edges of its own; any side will do. */
const sideways = ([x, y]: Vec3): Vec3 => (Math.hypot(x, y) > 1e-9 ? unit([-y, x, 0]) : [1, 0, 0]);

/** Tubes running on to where they have met, the cone, the outlet. */
function collector(header: Header, merge: ResolvedMerge, view: View): Lines {
  const { pose, inlets, tubeRadius, tubesEnd, coneEnd, length, outletRadius } = collectorPlan(header, merge);
  const frame = partFrame(pose);
  const at = (p: Vec3): Vec3 => seen(view, fromFrame(frame, p));
  const ends = inlets.map(({ position: p, direction: d }) => addScaled(p, d, tubesEnd / d[2]));
  const stubs = inlets.map((inlet, i) => {
    const middle = [at(inlet.position), at(ends[i]!)];
    const aside = sideways(sub(middle[1]!, middle[0]!));
    return tube(middle, [aside, aside], tubeRadius);
  });
  const reach = Math.max(0, ...ends.map(([x, y]) => Math.hypot(x, y))) + tubeRadius;
  const slices = Array.from({ length: CONE_SLICES + 1 }, (_, k) => {
    const t = k / CONE_SLICES;
    return { z: tubesEnd + t * (coneEnd - tubesEnd), radius: reach + t * (outletRadius - reach) };
  });
  const cone = slices.slice(1).map(
    ({ z, radius }, k): Rod => ({
      from: at([0, 0, slices[k]!.z]),
      to: at([0, 0, z]),
      radius: (radius + slices[k]!.radius) / 2,
    }),
  );
  const axis = [at([0, 0, tubesEnd]), at([0, 0, coneEnd]), at([0, 0, length])] as const;
  const side = sideways(sub(axis[2], axis[0]));
  const rim = (z: number, radius: number): Vec3[] =>
    Array.from({ length: AROUND + 1 }, (_, k) => {
      const a = (2 * Math.PI * k) / AROUND;
      return at([radius * Math.cos(a), radius * Math.sin(a), z]);
    });
  return {
    lines: [
      ...stubs.flatMap((s) => s.lines),
      ...[1, -1].map((s) => [
        addScaled(axis[0], side, s * reach),
        addScaled(axis[1], side, s * outletRadius),
        addScaled(axis[2], side, s * outletRadius),
      ]),
      rim(tubesEnd, reach),
      rim(coneEnd, outletRadius),
      rim(length, outletRadius),
    ],
    bodies: {
      rods: [...stubs.flatMap((s) => s.bodies.rods), ...cone, { from: axis[1], to: axis[2], radius: outletRadius }],
      faces: [],
    },
  };
}

function ring({ centre, axis }: { centre: Vec3; axis: Vec3 }, radius: number): Vec3[] {
  const one = unit(Math.abs(axis[2]) < 0.9 ? cross(axis, [0, 0, 1]) : cross(axis, [1, 0, 0]));
  const other = cross(axis, one);
  return Array.from({ length: AROUND + 1 }, (_, k) => {
    const a = (2 * Math.PI * k) / AROUND;
    return add(centre, add(scale(one, radius * Math.cos(a)), scale(other, radius * Math.sin(a))));
  });
}

type Hole = { readonly centre: readonly [number, number]; readonly radius: number };

/** Both faces' outlines, the edges between them as the eye sees them, holes on the outer face. */
function plateLines(pose: Pose, outline: Loop, holes: readonly Hole[], thickness: number, view: View): Lines {
  const frame = partFrame(pose);
  const at = (x: number, y: number, z: number): Vec3 => seen(view, fromFrame(frame, [x, y, z]));
  const loop = edges(outline).flatMap((edge) => along(edge));
  const closed = [...loop, loop[0]!];
  const [x, y, normal] = [frame[0], frame[1], frame[2]].map((axis) => seen(view, axis)) as [Vec3, Vec3, Vec3];
  const face = (z: number): Face => ({ origin: at(0, 0, z), x, y, normal, edges: edges(outline) });
  // A side stands on edge to the eye where its own normal turns from it.
  const facing = loop.map(([px, py], i) => {
    const [qx, qy] = loop[(i + 1) % loop.length]!;
    return (qy - py) * x[2] - (qx - px) * y[2] > 0;
  });
  const sides = loop.flatMap(([px, py], i) =>
    facing[i] !== facing[(i + loop.length - 1) % loop.length] ? [[at(px, py, 0), at(px, py, -thickness)]] : [],
  );
  return {
    lines: [
      closed.map(([px, py]) => at(px, py, 0)),
      closed.map(([px, py]) => at(px, py, -thickness)),
      ...sides,
      ...holes.map(({ centre: [cx, cy], radius }) =>
        Array.from({ length: AROUND / 2 + 1 }, (_, k) => {
          const a = (4 * Math.PI * k) / AROUND;
          return at(cx + radius * Math.cos(a), cy + radius * Math.sin(a), 0);
        }),
      ),
    ],
    bodies: { rods: [], faces: [face(0), face(-thickness)] },
  };
}

const PIECES = 12;
const along = (edge: Edge): (readonly [number, number])[] =>
  edge.arc ? Array.from({ length: PIECES }, (_, k) => pointOnEdge(edge, k / PIECES)) : [edge.from];
