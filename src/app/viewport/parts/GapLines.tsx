/** Least clearances of what is selected, as dimension lines across the gap; their numbers hang over the picture. */
import { useMemo } from 'react';
import { addScaled, anySquareTo, cross, distance, sub, unit } from '../../../../geometry';
import type { Vec3 } from '../../../../shared/vec3';
import { Lines } from '../gl/Lines';
import type { GapLine } from '../model/gapLine';
import type { Palette } from '../palette';

/** Half the length of the ticks at both ends, mm. */
const TICK = 5;

type Props = { readonly line: GapLine; readonly fails: boolean; readonly palette: Palette };

export function GapMark({ line, fails, palette }: Props) {
  const pairs = useMemo(() => {
    const along = distance(line.from, line.to) > 0 ? unit(sub(line.to, line.from)) : ([0, 0, 1] as Vec3);
    const a = anySquareTo(along);
    const b = cross(along, a);
    const out: number[] = [...line.from, ...line.to];
    for (const end of [line.from, line.to])
      for (const way of [a, b]) out.push(...addScaled(end, way, -TICK), ...addScaled(end, way, TICK));
    return out;
  }, [line]);
  return <Lines pairs={pairs} colour={fails ? palette.fail : palette.dimension} width={1.8} onTop />;
}
