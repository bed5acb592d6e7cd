/** Zero gradient: what lies just inside passes as it is, either way, as if the pipe went on. */
import { writeLeaving } from './flux';
import { type End, type Planes, storesNothing } from './planes';
import { Wave } from './wave';

export function throughEnd(planes: Planes, plane: number): End {
  const wave = new Wave(planes, plane);
  return storesNothing([plane], true, () => {
    wave.meet();
    wave.behind(wave.pressure);
    writeLeaving(planes, wave);
  });
}
