/**
 * An opening into the surroundings: outflow leaves at their pressure unless it is sonic, inflow comes isentropically from rest out
 * there. A plate with a hole over it makes it a vessel that never changes. The end correction is a length and not in here.
 */
import type { Opening } from './areaLaw';
import { passHole, Room } from './orifice';
import { type End, type Planes, storesNothing } from './planes';
import { Wave } from './wave';

/** What lies outside: Pa, K, mass fractions of the carried components. */
export type Surroundings = {
  readonly pressure: number;
  readonly temperature: number;
  readonly fractions: Float64Array;
};

/**
 * @param hole the plate's effective area, m², over time: never more than the pipe's own takes part; null: no plate
 */
export function openEnd(planes: Planes, plane: number, outside: Surroundings, hole: Opening | null): End {
  const wave = new Wave(planes, plane);
  const room = new Room(outside.fractions);
  room.fill(planes, outside.pressure, outside.temperature);
  return storesNothing([plane], true, (time, dt) => {
    const share = hole === null ? 1 : hole.mean(time, time + dt) / planes.area[plane]!;
    passHole(planes, wave, room, Math.min(share, 1));
  });
}
