/** The plates of a flange as they come out, before anything is judged: one for all ports, or one for each. mm, on the plate. */
import type { Flange } from '../../shared/design/types';
import { nutRoom } from '../../shared/stock/hexFasteners';
import { holeClassOf } from '../../shared/stock/holes';
import type { Header, ResolvedPort } from '../header/resolve';
import { partFrame } from '../parts/place';
import { breakCorners } from '../plane/breakCorners';
import { cutLoop } from '../plane/cut';
import { type Disc, hullLoop } from '../plane/discs';
import { circleLoop, type Loop, polygonLoop } from '../plane/loop';
import { angleBetween } from '../vector';
import { hugOutline } from './outline';
import { partings, sideOf } from './partings';
import type { PlateHole, PlatePlan } from './plan';
import { onPlate, type PlateFrame, plateFrame } from './plateFrame';
import { borderOf, CORNER, stepDepthOf, WASHER_LAND } from './practice';
import { type Seat, seatOf } from './seats';

export type Draft = Omit<PlatePlan, 'pose' | 'thickness'> & {
  readonly frame: PlateFrame;
  readonly seats: readonly Seat[];
};

/** A fastener's hole, and the disc of plate that its border and its washer want. */
export type Stud = { readonly hole: PlateHole; readonly boss: Disc };

export function studsOn(frame: PlateFrame, flange: Flange): Stud[] {
  return (flange.fasteners ?? []).map(({ position, thread, hole }, fastener) => {
    const centre = onPlate(frame, position);
    const r = Math.max(hole / 2 + borderOf(flange), nutRoom(thread, hole).washer / 2 + WASHER_LAND);
    return {
      hole: { fastener, centre, diameter: hole, thread, series: holeClassOf(thread, hole) },
      boss: { x: centre[0], y: centre[1], r },
    };
  });
}

export function draftOne(header: Header, flange: Flange, ports: readonly ResolvedPort[]): Draft {
  const frame = plateFrame(ports);
  const seats = ports.map((port) => seatOf(header, flange, port, frame));
  const studs = studsOn(frame, flange);
  const outline = flange.outline ?? hugOutline(seats, studs.map((s) => s.boss)); // biome-ignore format: one line
  return { id: `flange ${flange.id}`, frame, ...contents(flange, seats, studs, []), outline };
}

/** Each hugs its port and the fasteners on its side of the lines that part it from its neighbours. */
export function draftSeparate(header: Header, flange: Flange, ports: readonly ResolvedPort[]): Draft[] {
  const common = plateFrame(ports);
  const parallel = ports.every((p) => angleBetween(p.pose.direction, common.pose.direction) < SAME_WAY);
  return ports.map((port, k) => {
    const pose = parallel ? { ...common.pose, position: port.pose.position } : plateFrame([port]).pose;
    const frame: PlateFrame = { pose, axes: partFrame(pose) };
    const seats = ports.map((p) => seatOf(header, flange, p, frame));
    const own = seats[k]!;
    const studs = studsOn(frame, flange);
    const lines = partings(own, seats, studs);
    const mine = studs.filter((stud) => lines.every((line) => sideOf(line, stud) !== 'beyond'));
    const bites = mine.filter((stud) => lines.some((line) => sideOf(line, stud) === 'on'));
    const [x, y] = onPlate(common, port.pose.position);
    const drawn = flange.outline?.map(([u, v, bulge]): [number, number, number] => [u - x, v - y, bulge]);
    let outline: Loop | null = drawn ?? hugOutline([own], mine.map((s) => s.boss)); // biome-ignore format: one line
    for (const { corners } of lines) outline = outline && cutLoop(outline, polygonLoop(corners), 'inside');
    for (const { hole } of bites)
      outline = outline && cutLoop(outline, circleLoop(hole.centre, hole.diameter / 2), 'outside');
    const held = contents(flange, [own], mine.filter((s) => !bites.includes(s)), bites); // biome-ignore format: one line
    const finished = outline && !drawn ? breakCorners(outline, CORNER) : outline;
    return { id: `flange ${flange.id} plate ${k + 1}`, frame, ...held, outline: finished ?? [] };
  });
}

/** Ports that are square to one plane, radians: a drawn outline can be theirs. */
const SAME_WAY = 1e-4;

function contents(flange: Flange, seats: readonly Seat[], studs: readonly Stud[], bites: readonly Stud[]) {
  const depth = stepDepthOf(flange);
  return {
    seats,
    ports: seats.map((s) => s.port),
    openings: seats.map(({ port, opening }) => ({ port, loop: hullLoop(opening) })),
    steps: seats.flatMap(({ port, step }) => (step ? [{ port, loop: hullLoop(step), depth }] : [])),
    holes: studs.map((s) => s.hole),
    bites: bites.map((s) => s.hole),
  };
}
