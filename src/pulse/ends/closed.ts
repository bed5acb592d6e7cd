/** A wall: the wave that stops the gas gives the pressure on it. Nothing passes. */
import { writeWall } from './flux';
import { type End, type Planes, storesNothing } from './planes';
import { Wave } from './wave';

export function closedEnd(planes: Planes, plane: number): End {
  const wave = new Wave(planes, plane);
  return storesNothing([plane], false, () => {
    wave.meet();
    wave.atVelocity(0);
    writeWall(planes, wave);
  });
}
