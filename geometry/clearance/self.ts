/**
 * Least gap between parts of one tube that are far enough apart along it. mm.
 * Here the centerline distance less the diameter is the rule itself: both places are inside one tube, with no ends.
 */
import { lerp } from '../vector';
import { type Chain, type Link, sagitta, vectorAt } from './chain';
import { GAP_RESOLUTION, type Gap } from './gap';
import { type Closest, closestOnSegments } from './segments';

/** A pair of chords this short that straddles the least separation is judged as a whole, mm. */
const SHORTEST = 0.02;

/** @param apart least distance along the centerline at which two parts count, mm */
export function selfGap(tube: Chain, apart: number, below: number): Gap | null {
  const { tubeRadius } = tube;
  const slot: Closest = { squared: 0, s: 0, t: 0 };
  let best: Gap | null = null;
  let bound = below;
  const search = (p: Stretch, q: Stretch): void => {
    if (q.end - p.start < apart) return;
    closestOnSegments(p.from, 0, 1, q.from, 0, 1, slot);
    const gap = Math.sqrt(slot.squared) - 2 * tubeRadius;
    if (gap - p.sagitta - q.sagitta >= bound - GAP_RESOLUTION) return;
    const straddles = q.start - p.end < apart;
    const wantsP = p.sagitta > GAP_RESOLUTION || (straddles && p.end - p.start > SHORTEST);
    const wantsQ = q.sagitta > GAP_RESOLUTION || (straddles && q.end - q.start > SHORTEST);
    if (wantsP && (!wantsQ || p.end - p.start >= q.end - q.start)) for (const half of halves(p)) search(half, q);
    else if (wantsQ) for (const half of halves(q)) search(p, half);
    else {
      bound = gap;
      const at = lerp(vectorAt(p.from, 0), vectorAt(p.from, 1), slot.s);
      best = { gap, at, station: p.start + slot.s * (p.end - p.start) };
    }
  };
  const stretches = tube.links.map((link) => stretch(link, 0, 1));
  for (const [i, p] of stretches.entries()) for (const q of stretches.slice(i)) search(p, q);
  return best;
}

/** Part of a link between two fractions of its length. */
type Stretch = {
  readonly link: Link;
  readonly low: number;
  readonly high: number;
  readonly start: number;
  readonly end: number;
  /** Its two end points. */
  readonly from: Float64Array;
  readonly sagitta: number;
};

function stretch(link: Link, low: number, high: number): Stretch {
  const from = new Float64Array(6);
  writeAlong(link, low, from, 0);
  writeAlong(link, high, from, 3);
  return {
    link,
    low,
    high,
    start: link.station + low * link.length,
    end: link.station + high * link.length,
    from,
    sagitta: sagitta(link, link.count * (high - low)),
  };
}

const halves = ({ link, low, high }: Stretch): readonly Stretch[] => {
  const middle = (low + high) / 2;
  return [stretch(link, low, middle), stretch(link, middle, high)];
};

/** Between two of the link's points the chord serves: it strays by less than the chords' own sagitta. */
function writeAlong({ points, count }: Link, fraction: number, out: Float64Array, at: number): void {
  const x = fraction * count;
  const k = Math.min(count - 1, Math.floor(x));
  for (let i = 3 * k, j = at; j < at + 3; i++, j++) out[j] = points[i]! + (x - k) * (points[i + 3]! - points[i]!);
}
