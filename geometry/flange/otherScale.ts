/** Whether a drawing would fit its ports far better at another size: then its scale is wrong, and not the ports. mm. */
import type { Point2 } from '../plane/loop';
import { movePoint2, type Rigid, rigidFit, sizeFit } from '../plane/rigid';

export type OtherScale = {
  /** The drawing's size must be multiplied by this. */
  readonly times: number;
  /** How far off the ports its openings lie at most, then. */
  readonly worst: number;
  /** Two openings fit two ports at some size whatever they are: that proves nothing of the ports. */
  readonly sure: boolean;
};

/** Far better: a quarter of what is left at the size given. */
const SHARE = 0.25;

/** @param worst at the size given. Null where another size does little, or there is but one opening. */
export function otherScale(
  openings: readonly Point2[],
  ports: readonly Point2[],
  rigid: Rigid,
  worst: number,
): OtherScale | null {
  const times = sizeFit(openings, ports, rigid);
  if (openings.length < 2 || !(times > 0) || !Number.isFinite(times)) return null;
  const sized = openings.map(([x, y]): Point2 => [times * x, times * y]);
  const free = rigidFit(sized, ports, rigid.mirrored);
  const off = sized.map((p, k) => {
    const [x, y] = movePoint2(p, free);
    return Math.hypot(x - ports[k]![0], y - ports[k]![1]);
  });
  const left = Math.max(...off);
  return left < SHARE * worst ? { times, worst: left, sure: openings.length > 2 } : null;
}

export const scaleWords = ({ times, worst }: OtherScale): string =>
  `At ${times.toFixed(3)} times it fits within ${worst.toFixed(2)} mm: check the distance that set its scale, or its unit`;
