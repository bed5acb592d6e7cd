/**
 * A piece of the header as a solid that moves: its tubes, collectors and flange plates, bare, with holes in plates taken as filled.
 * Sliding straight out along its plates' normal a plate meets things with its outer face only, so then it is no more than that.
 * mm, where it rests.
 */
import type { Flange } from '../../shared/design/types';
import type { Vec3 } from '../../shared/vec3';
import type { Centerline } from '../curve/centerline';
import { pointAt } from '../curve/pointAt';
import { flangePlan } from '../flange/plan';
import { plateFrame, turnedOnPlate } from '../flange/plateFrame';
import { borderOf } from '../flange/practice';
import { openingDiscs } from '../flange/seats';
import type { Frustum, Pose } from '../header/merge';
import type { Header, ResolvedRunner } from '../header/resolve';
import { hullLoop } from '../plane/discs';
import { type Point2, sampleLoop } from '../plane/loop';
import { LENGTH_TOLERANCE, RADIANS } from '../tolerance';
import { angleBetween, distance } from '../vector';
import { type Cell, frustumCell, joinedCells, plateCell, tubeCell } from './cells';
import type { Matrix } from './pose';

export type Body = {
  readonly cells: Cell;
  readonly middle: Vec3;
  readonly reach: number;
  /** Balls that hold all of it, for its outermost extent: x, y, z and radius of each. */
  readonly balls: Float64Array;
};

const CHORD = 0.05;
/** So thick is what stands for a plate's outer face, mm. */
const FACE = 0.5;
/** A plate slides along its own normal within this. */
const SQUARE = 0.1 * RADIANS;

type Members = {
  readonly runners: readonly string[];
  readonly merges: readonly string[];
  readonly flanges: readonly string[];
};

/**
 * @param sliding the way it slides out, if it does
 * @param plateRunners whose plates count, of flanges with one for each
 * @returns null where nothing of it is laid
 */
export function bodyOf(
  header: Header,
  members: Members,
  sliding: Vec3 | null = null,
  plateRunners: readonly string[] = members.runners,
): Body | null {
  const tubes = header.runners.filter((r) => members.runners.includes(r.runner.id)).flatMap(tubeCells);
  const bodies = members.merges.map((id) => frustumCell(header.merges.get(id)!.body));
  const plates = (header.design.flanges ?? [])
    .filter((f) => members.flanges.includes(f.id))
    .flatMap((flange) =>
      platesOf(header, flange, plateRunners).map(({ pose, outline, thickness }) => {
        const isSquare = sliding && angleBetween(sliding, pose.direction) < SQUARE;
        return plateCell(pose, outline, isSquare ? Math.min(FACE, thickness) : thickness);
      }),
    );
  const all = [...tubes, ...bodies, ...plates];
  if (all.length === 0) return null;
  const cells = joinedCells(all);
  return { cells, middle: [cells.x, cells.y, cells.z], reach: cells.outer, balls: ballsOf(cells) };
}

/** Flat ends as bars up to a radius from each end, where balls would stick out; balls between. */
function tubeCells({ centerline: line, tubeRadius: r }: ResolvedRunner): Cell[] {
  if (!line || !(line.length > 0)) return [];
  const { near, bars } = endBars(line, r);
  const ends = bars.map(frustumCell);
  return line.length > 2 * near + LENGTH_TOLERANCE ? [tubeCell(line, r, near, line.length - near), ...ends] : ends;
}

/** At both ends, each a radius long where there is tube enough. */
export function endBars(line: Centerline, radius: number): { near: number; bars: readonly [Frustum, Frustum] } {
  const near = Math.min(radius, line.length / 2);
  return { near, bars: [endBar(line, radius, 0, near), endBar(line, radius, line.length, near)] };
}

/** A straight bar from one end; where the tube bends within it, as much thicker as the bend strays. */
function endBar(line: Centerline, radius: number, end: number, length: number): Frustum {
  const [here, there] = [pointAt(line, end), pointAt(line, end === 0 ? length : end - length)];
  const inward: Vec3 = end === 0 ? here.tangent : [-here.tangent[0], -here.tangent[1], -here.tangent[2]];
  const straight: Vec3 = [
    here.position[0] + length * inward[0],
    here.position[1] + length * inward[1],
    here.position[2] + length * inward[2],
  ];
  const thick = radius + distance(straight, there.position);
  return { position: here.position, axis: inward, length, startRadius: thick, endRadius: thick };
}

type Plate = { readonly pose: Pose; readonly outline: readonly Point2[]; readonly thickness: number };

/** Of the flange's plates those that one of the runners starts from; a plate that cannot be made is taken as the hull of its openings. */
export function platesOf(header: Header, flange: Flange, runners: readonly string[]): Plate[] {
  const starts = new Set(
    header.runners.flatMap(({ runner: { id, from } }) => (runners.includes(id) && 'port' in from ? [from.port] : [])),
  );
  const { plates } = flangePlan(header, flange);
  const made = plates
    .filter((p) => flange.plates !== 'separate' || p.ports.some((port) => starts.has(port)))
    .map(({ pose, outline, thickness }) => ({ pose, outline: sampleLoop(outline, CHORD), thickness }));
  const covered = new Set(plates.flatMap((p) => p.ports));
  const left = flange.ports
    .filter((id) => !covered.has(id) && starts.has(id))
    .flatMap((id) => header.ports.get(id) ?? []);
  if (left.length === 0) return made;
  const groups = flange.plates === 'separate' ? left.map((p) => [p]) : [left];
  return [
    ...made,
    ...groups.map((ports) => {
      const frame = plateFrame(ports);
      const discs = ports.flatMap((p) => turnedOnPlate(frame, p.pose, openingDiscs(p.port.opening)));
      const border = borderOf(flange);
      const outline = sampleLoop(hullLoop(discs.map((d) => ({ ...d, r: d.r + border }))), CHORD);
      return { pose: frame.pose, outline, thickness: flange.thickness };
    }),
  ];
}

/** Halved so often, the balls hold a solid closely enough to tell whether it is out. */
const HALVINGS = 8;
const SMALL_BALL = 40;

function ballsOf(root: Cell): Float64Array {
  const balls: number[] = [];
  const walk = (c: Cell, left: number): void => {
    const parts = left > 0 && c.outer > SMALL_BALL ? c.parts() : null;
    if (parts) for (const part of parts) walk(part, left - 1);
    else balls.push(c.x, c.y, c.z, c.outer);
  };
  walk(root, HALVINGS);
  return Float64Array.from(balls);
}

/** The box round a moved body: low x, y, z, high x, y, z. */
export function extent({ balls }: Body, m: Matrix): Float64Array {
  const box = Float64Array.from({ length: 6 }, (_, k) => (k < 3 ? Number.POSITIVE_INFINITY : Number.NEGATIVE_INFINITY));
  for (let i = 0; i < balls.length; i += 4)
    for (let k = 0; k < 3; k++) {
      const x = m[3 * k]! * balls[i]! + m[3 * k + 1]! * balls[i + 1]! + m[3 * k + 2]! * balls[i + 2]! + m[9 + k]!;
      box[k] = Math.min(box[k]!, x - balls[i + 3]!);
      box[3 + k] = Math.max(box[3 + k]!, x + balls[i + 3]!);
    }
  return box;
}
