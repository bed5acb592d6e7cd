/**
 * A plate's edge: round each port and each fastener with the border asked for, ears drawn out to fasteners in tangent straights,
 * webs between neighbouring ports, and every inward corner rounded. Where no such edge is found, the belt round all of it. mm.
 */
import { type Disc, hullLoop, hullReach } from '../plane/discs';
import { hug } from '../plane/hug';
import { selfCrossing } from '../plane/inside';
import type { Loop } from '../plane/loop';
import { SERVES, WEB_SHARE } from './practice';
import type { Seat } from './seats';

/** What a fastener wants of the plate, and where. */
export type Boss = Disc;

/** Of the ball that rounds inward corners, of the greatest boss's radius: about what is left of a plate's edge by hand tools. */
const BALL = 1.5;
const LEAST_BALL = 12;

/** Far more than a flange has; beyond, finding where all of them cross would take seconds. */
const MOST_HULLS = 100;

export function hugOutline(seats: readonly Seat[], bosses: readonly Boss[]): Loop {
  const hulls = [
    ...seats.map((s) => s.body),
    ...bosses.flatMap((boss) => servedBy(boss, seats).map((seat) => [...seat.body, boss])),
    ...neighbours(seats).map(([a, b]) => webDiscs(a, b)),
  ];
  if (hulls.length > MOST_HULLS) return hullLoop(hulls.flat());
  const ball = Math.max(LEAST_BALL, ...bosses.map(({ r }) => BALL * r));
  const found = hug(hulls, ball);
  return found && selfCrossing(found) === null ? found : hullLoop(hulls.flat());
}

/** The ports that a fastener holds down: its nearest, and those hardly farther. */
export function servedBy(boss: Pick<Disc, 'x' | 'y'>, seats: readonly Seat[]): Seat[] {
  const away = seats.map(({ middle }) => Math.hypot(boss.x - middle.x, boss.y - middle.y));
  const least = Math.min(...away);
  return seats.filter((_, k) => away[k]! <= SERVES * least);
}

/** Half the height that a web has at least, of the ports at both its ends. */
export function leastWeb(a: Seat, b: Seat): number {
  const across = Math.atan2(b.middle.y - a.middle.y, b.middle.x - a.middle.x) + Math.PI / 2;
  return WEB_SHARE * Math.max(halfHeight(a, across), halfHeight(b, across));
}

/** Of what hugs a port, square to the line of ports. */
export function halfHeight({ body }: Seat, angle: number): number {
  return (hullReach(body, angle) + hullReach(body, angle + Math.PI)) / 2;
}

function webDiscs(a: Seat, b: Seat): Disc[] {
  const r = leastWeb(a, b);
  return [a, b].map(({ middle }) => ({ x: middle.x, y: middle.y, r }));
}

/** The pairs of ports that hang the plate together: each port joined to the nearest one that already hangs. */
export function neighbours(seats: readonly Seat[]): [Seat, Seat][] {
  const [first, ...rest] = seats;
  if (!first) return [];
  const hung = [first];
  const left = new Set(rest);
  const pairs: [Seat, Seat][] = [];
  while (left.size > 0) {
    const options = hung.flatMap((a) => [...left].map((b): [Seat, Seat] => [a, b]));
    const pair = options.reduce((x, y) => (between(y) < between(x) ? y : x));
    pairs.push(pair);
    hung.push(pair[1]);
    left.delete(pair[1]);
  }
  return pairs;
}

const between = ([a, b]: [Seat, Seat]): number => Math.hypot(a.middle.x - b.middle.x, a.middle.y - b.middle.y);
