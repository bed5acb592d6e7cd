/** The axis that the engine rolls about, dash-dotted as on a drawing, and how far it rolls, as a sector at either end. */
import { useMemo } from 'react';
import { addScaled, cross, distance, dot, type Header, norm, reject, sub, unit } from '../../../../geometry';
import type { Motion } from '../../../../shared/design/types';
import type { Vec3 } from '../../../../shared/vec3';
import { Lines } from '../../viewport/gl/Lines';
import { headerBalls } from '../../viewport/model/content';
import type { Palette } from '../../viewport/palette';

type Rock = NonNullable<Motion['rock']>;
type Props = { readonly rock: Rock; readonly header: Header; readonly palette: Palette };

/** How far the axis stands out past the header, mm. */
const PAST = 40;
const STEPS = 24;
const RADIANS = Math.PI / 180;

export function RollAxis({ rock, header, palette }: Props) {
  const { axis, arcs } = useMemo(() => drawn(rock, header), [rock, header]);
  return (
    <>
      <Lines pairs={axis} colour={palette.dimension} width={1.6} dash={14} onTop />
      <Lines pairs={arcs} colour={palette.dimension} width={1.6} onTop />
    </>
  );
}

function drawn({ position, axis, angles }: Rock, header: Header): { axis: readonly number[]; arcs: readonly number[] } {
  const way = unit(axis);
  const balls = headerBalls(header);
  const along = balls.map(({ at }) => dot(sub(at, position), way));
  const low = Math.min(0, ...along) - PAST;
  const high = Math.max(0, ...along) + PAST;
  const ends = [addScaled(position, way, low), addScaled(position, way, high)] as const;
  // From the axis toward the middle of the header: the roll is seen on what rolls.
  const middle = balls.reduce<Vec3>((sum, { at }) => addScaled(sum, at, 1 / balls.length), [0, 0, 0]);
  const toward = reject(sub(middle, position), way);
  const out = norm(toward) > 1 ? unit(toward) : unit(reject([0.3, 0.5, 0.8], way));
  const side = cross(way, out);
  const radius = Math.max(60, Math.min(220, distance([0, 0, 0], toward)));
  const at = (end: Vec3, degrees: number, r = radius): Vec3 => {
    const a = degrees * RADIANS;
    return addScaled(addScaled(end, out, r * Math.cos(a)), side, r * Math.sin(a));
  };
  const arcs = ends.flatMap((end) => {
    const [from, to] = angles;
    const pairs: number[] = [];
    for (let i = 0; i < STEPS; i++)
      pairs.push(...at(end, from + ((to - from) * i) / STEPS), ...at(end, from + ((to - from) * (i + 1)) / STEPS));
    for (const angle of [from, to]) pairs.push(...end, ...at(end, angle, 1.06 * radius));
    return pairs;
  });
  return { axis: [...ends[0], ...ends[1]], arcs };
}
