/**
 * Where marks stand on the picture. What sits on the tube stays there; a mark that may stand beside its place takes the
 * first free one of a few, so that no two are closer than a finger or a pointer can tell apart. Pure; px.
 */
import type { Handle } from '../../shape/handle';

type Px = readonly [x: number, y: number];

export type Spot = {
  readonly key: string;
  readonly kind: Handle['kind'];
  /** The place it belongs to. */
  readonly at: Px;
  /** Unit direction on the picture that it lies along. */
  readonly way: Px;
  /** For a slide: whether it stands before its place. */
  readonly back: boolean;
};

/** Where each stands, in the order given. @param apart least distance between centres @param kept choices made earlier, by key */
export function spread(spots: readonly Spot[], apart: number, kept: Map<string, number>): Px[] {
  const out: (Px | null)[] = spots.map((s) => (stays(s) ? s.at : null));
  spots.forEach((spot, i) => {
    if (out[i]) return;
    const places = choices(spot, apart);
    const room = (p: Px) =>
      Math.min(...out.map((q) => (q ? Math.hypot(p[0] - q[0], p[1] - q[1]) : Number.POSITIVE_INFINITY)));
    const free = places.findIndex((p) => room(p) >= apart * TOLERATED);
    // Alone on the picture it is in hand: it stays where it was taken.
    const alone = spots.length === 1 ? kept.get(spot.key) : undefined;
    const best = alone ?? (free >= 0 ? free : mostRoom(places.map(room)));
    kept.set(spot.key, best);
    out[i] = places[best]!;
  });
  return out as Px[];
}

const TOLERATED = 0.85;
const stays = ({ kind }: Spot): boolean => !['slide', 'add', 'turn', 'tilt'].includes(kind);
const mostRoom = (rooms: readonly number[]): number => rooms.indexOf(Math.max(...rooms));

function choices({ kind, at, way, back }: Spot, apart: number): Px[] {
  const [ux, uy] = way;
  const off = (along: number, aside: number): Px => [
    at[0] + apart * (along * ux - aside * uy),
    at[1] + apart * (along * uy + aside * ux),
  ];
  // On its own straight, farther out where that is crowded.
  if (kind === 'slide') return [0.35, 0.6, 0.9].map((k) => off(back ? -k : k, 0));
  // Beside the tube, one on each side.
  if (kind === 'add') return [off(0, -1), off(0, -1.6), off(1, -1), off(-1, -1)];
  if (kind === 'turn') return [off(0, 1), off(0, 1.6), off(1, 1), off(-1, 1)];
  return [off(0.8, 0), off(-0.8, 0), off(0, 1), off(0, -1)];
}
