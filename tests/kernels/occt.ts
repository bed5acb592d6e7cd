/**
 * A boundary-representation kernel as an outside judge: exact cylinders, tori, cones and ruled faces, their volumes, and
 * meshes of them. mm. Shapes live outside the garbage collector: give them to `free` when done. Booleans may go wrong
 * without a word (coincident faces above all), so hold every volume against the mesh kernel or a closed form too.
 */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import {
  assembleWire,
  cast,
  type Edge,
  makeCircle,
  makeCylinder,
  makeFace,
  makeLine,
  makeThreePointArc,
  measureVolume,
  Plane,
  type Shape3D,
  setOC,
  type Wire,
} from 'replicad';
import init, { type OpenCascadeInstance } from 'replicad-opencascadejs';
import { anySquareTo, type Centerline, type Mesh, pointOnSegment, type Segment } from '../../geometry';
import type { Vec3 } from '../../shared/vec3';

export type OcctShape = Shape3D;

/** A plane that cuts: what lies on the side its normal points to is taken away. */
export type CuttingPlane = { readonly point: Vec3; readonly normal: Vec3 };

/** Where a straight tube begins, which way it runs and how far. */
export type Run = { readonly position: Vec3; readonly direction: Vec3; readonly length: number };

let loading: Promise<OpenCascadeInstance> | undefined;
let kernel: OpenCascadeInstance | undefined;

/** Once before anything else here. What the kernel prints of its own accord goes nowhere. */
export async function loadOcct(): Promise<void> {
  const file = createRequire(import.meta.url).resolve('replicad-opencascadejs/wasm');
  loading ??= init({ wasmBinary: readFileSync(file), print: () => {}, printErr: () => {} });
  kernel = await loading;
  setOC(kernel);
}

function loaded(): OpenCascadeInstance {
  if (!kernel) throw new Error('The B-rep kernel is not loaded: await loadOcct() first.');
  return kernel;
}

export function free(...shapes: readonly { delete(): void }[]): void {
  for (const shape of shapes) shape.delete();
}

const triple = ([x, y, z]: Vec3): [number, number, number] => [x, y, z];

export function occtCylinder({ position, direction, length }: Run, radius: number): OcctShape {
  return makeCylinder(radius, length, triple(position), triple(direction));
}

/** A straight tube, cut. @param inner radius of the bore; 0 makes a bar */
export function occtCutTube(run: Run, outer: number, inner: number, planes: readonly CuttingPlane[] = []): OcctShape {
  let shape = occtCylinder(run, outer);
  if (inner > 0) shape = freeing(shape, (bar) => freeing(occtCylinder(run, inner), (bore) => bar.cut(bore)));
  for (const plane of planes) shape = freeing(shape, (whole) => occtTrim(whole, plane));
  return shape;
}

/** What is left of a shape behind a plane; the shape stays. @throws where nothing is left */
export function occtTrim(shape: OcctShape, { point, normal }: CuttingPlane): OcctShape {
  const plane = new Plane(triple(point), triple(anySquareTo(normal)), triple(normal));
  const left = shape.cutPlane(plane, 0, 'negative');
  plane.delete();
  if (!left) throw new Error(`Nothing is left behind the plane at (${point.join(', ')}).`);
  return left;
}

/** A solid between two plane polygons of as many corners, by straight lines from corner k to corner k, and flat ends. */
export function occtRuledLoft(a: readonly Vec3[], b: readonly Vec3[]): OcctShape {
  if (a.length !== b.length) throw new Error(`The polygons have ${a.length} and ${b.length} corners.`);
  const { BRepOffsetAPI_ThruSections } = loaded();
  const wires = [polygonWire(a), polygonWire(b)];
  const sections = new BRepOffsetAPI_ThruSections(true, true, 1e-6);
  // Else corners are matched by what lies nearest.
  sections.CheckCompatibility(false);
  for (const wire of wires) sections.AddWire(wire.wrapped);
  const shape = cast(sections.Shape()) as OcctShape;
  free(sections, ...wires);
  return shape;
}

function polygonWire(points: readonly Vec3[]): Wire {
  return wireOf(points.map((p, i) => makeLine(triple(p), triple(points[(i + 1) % points.length]!))));
}

function wireOf(edges: readonly Edge[]): Wire {
  const wire = assembleWire([...edges]);
  free(...edges);
  return wire;
}

/** A tube swept along its centerline. @param inner radius of the bore; 0 makes a bar */
export function occtSweep(line: Centerline, outer: number, inner: number): OcctShape {
  const first = line.points[0]!;
  const along = line.directions[0]!;
  const spine = wireOf(line.segments.filter(({ length }) => length > 1e-9).map(edgeOf));
  const rim = wireOf([makeCircle(outer, triple(first), triple(along))]);
  // A hole's edge runs the other way round.
  const bore = inner > 0 ? [wireOf([makeCircle(inner, triple(first), [-along[0], -along[1], -along[2]])])] : [];
  const profile = makeFace(rim, bore);
  const { BRepOffsetAPI_MakePipe } = loaded();
  const pipe = new BRepOffsetAPI_MakePipe(spine.wrapped, profile.wrapped);
  const shape = cast(pipe.Shape()) as OcctShape;
  free(pipe, spine, profile);
  return shape;
}

function edgeOf(segment: Segment): Edge {
  const [start, middle, end] = [0, segment.length / 2, segment.length].map((s) =>
    triple(pointOnSegment(segment, s).position),
  ) as [Triple, Triple, Triple];
  return segment.kind === 'arc' ? makeThreePointArc(start, middle, end) : makeLine(start, end);
}

type Triple = [number, number, number];

export const occtVolume = (shape: OcctShape): number => measureVolume(shape);

/** An angle that no facet turns by: the chord error alone decides. */
const ANY_ANGLE = 10;

/** The kernel's own meshing, without reading it out: what a bench measures. A mesh that was made before is made again. */
export function occtMeshing(shape: OcctShape, chordError: number): void {
  const { BRepMesh_IncrementalMesh, BRepTools } = loaded();
  BRepTools.Clean(shape.wrapped, true);
  free(new BRepMesh_IncrementalMesh(shape.wrapped, chordError, false, ANY_ANGLE, false));
}

/** The shape's mesh, face by face: corners on the edges between faces come once for each, so it is not one shell. */
export function occtMesh(shape: OcctShape, chordError: number): Mesh {
  const { vertices, triangles } = shape.mesh({ tolerance: chordError, angularTolerance: ANY_ANGLE });
  return { positions: Float64Array.from(vertices), triangles: Uint32Array.from(triangles) };
}

/** What is made of a shape that is then freed. */
function freeing(shape: OcctShape, use: (shape: OcctShape) => OcctShape): OcctShape {
  try {
    return use(shape);
  } finally {
    free(shape);
  }
}
