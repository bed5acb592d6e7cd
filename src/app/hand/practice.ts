/**
 * Small asks that nobody sees, before a hand takes hold: a browser compiles what it runs often, and the first drag would
 * otherwise pay for that. Turn by turn, so that whoever takes hold meanwhile need not wait.
 */
import { follower, type Header, type Meshes, movePoint } from '../../../geometry';

/** Asks of each runner that is tried, round a circle of so many mm. */
const ASKS = 24;
const RADIUS = 4;
const RUNNERS = 4;

/** Each turn is one ask. Leaves out what cannot be held: runners that are locked, or have too few bends. */
export function* practice(header: Header, meshes: Meshes): Generator<void> {
  const { design } = header;
  const able = design.runners.filter((r) => !r.locked && (r.points?.length ?? 0) > 4);
  for (const { id, points } of able.slice(0, RUNNERS)) {
    const hand = follower(design, meshes, { kind: 'points', runner: id, points: [2] }, header);
    const [x, y, z] = points![2]!;
    for (let k = 1; k <= ASKS; k++) {
      const turn = (2 * Math.PI * k) / ASKS;
      hand.ask(movePoint(design, id, 2, [x + RADIUS * Math.cos(turn) - RADIUS, y, z + RADIUS * Math.sin(turn)]));
      yield;
    }
  }
}
