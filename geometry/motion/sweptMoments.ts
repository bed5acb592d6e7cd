/**
 * The least gap over a motion of a thing that is asked as a whole, by branch and bound over boxes of angle and heat: its every
 * place is a mean of where it is at a box's four moments, which leaves the room that sweptBalls.ts tells. mm, radians.
 */
import type { Vec3 } from '../../shared/vec3';
import { distance } from '../vector';
import { leverOf, type Stand, type Sway } from './motion';
import { FINE } from './sweptBalls';

type Span = readonly [number, number];

const halved = ([low, high]: Span): readonly [Span, Span] => {
  const middle = (low + high) / 2;
  return [
    [low, middle],
    [middle, high],
  ];
};

/** How far a thing with flat ends is from an obstacle at one moment, where that is less than `below`. */
export type GapAt<G> = (stand: Stand, below: number) => { readonly gap: number; readonly found: G } | null;

/**
 * Where it overlaps at some moment, by how much it does so at the worst of the moments asked.
 * @param about a place of it and how far it reaches from there
 */
export function leastOfMoments<G>(
  gapAt: GapAt<G>,
  { at, reach }: { readonly at: Vec3; readonly reach: number },
  sway: Sway,
  below: number,
): { readonly gap: number; readonly found: G; readonly stand: Stand } | null {
  let best: { gap: number; found: G; stand: Stand } | null = null;
  const bound = (): number => best?.gap ?? below;
  const known = new Map<string, number>();
  const lever = sway.rock ? leverOf(sway, ...at) + reach * (1 + Math.abs(sway.growth)) : 0;
  const path = Math.abs(sway.growth) * (distance(at, sway.middle) + reach);
  const ask = (stand: Stand, within: number): number => {
    const key = `${stand.angle} ${stand.heat}`;
    const kept = known.get(key);
    if (kept !== undefined) return kept;
    const answer = gapAt(stand, within);
    if (answer && answer.gap < bound()) best = { ...answer, stand };
    const gap = answer ? Math.max(0, answer.gap) : within;
    known.set(key, gap);
    return gap;
  };
  const search = (a: Span, h: Span): void => {
    const turn = (a[1] - a[0]) / 2;
    const [swing, swell] = [2 * lever * Math.sin(turn), path * (h[1] - h[0])];
    const room = Math.max(bound(), 0) + swing + swell;
    const at = (angle: number, heat: number): number => ask({ angle, heat }, bound() > 0 ? room : bound());
    const [one, two] = [at(a[0], h[0]), at(a[1], h[1])];
    const [three, four] = [at(a[0], h[1]), at(a[1], h[0])];
    // Where it overlaps already nothing is told of what else is near, only what reaches in deeper.
    if (bound() <= 0) return;
    const least = Math.min(one, two, three, four);
    const stray = lever * (1 - Math.cos(turn));
    const low = Math.max(
      // From two corners across, no moment is further than swing and swell together: where the gap only grows, that tells it exactly.
      (Math.max(one + two, three + four) - swing - swell) / 2,
      Math.sqrt(Math.max(0, least * least - (swing * swing + swell * swell) / 4)) - stray,
    );
    if (low >= bound() - FINE || Math.max(swing, swell) < FINE) return;
    if (swing >= swell) for (const part of halved(a)) search(part, h);
    else for (const part of halved(h)) search(a, part);
  };
  const angles: Span = sway.rock ? [sway.rock.low, sway.rock.high] : [0, 0];
  search(angles, sway.growth !== 0 ? [0, 1] : [0, 0]);
  return best;
}
