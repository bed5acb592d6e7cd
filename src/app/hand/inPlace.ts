/** A hand's solver on the page's own thread, for where there are no workers: every ask is answered at once. */
import { type Follower, follower, type Held, type Meshes } from '../../../geometry';
import type { Design } from '../../../shared/design/types';
import type { Link, Listener } from './link';

export function inPlace(from: Design, meshes: Meshes, held: Held, on: Listener): Link {
  let follows: Follower | null = null;
  let ended = false;
  return {
    ask(asked) {
      if (ended) return;
      const began = performance.now();
      follows ??= follower(from, meshes, held);
      let answer = follows.ask(asked);
      while (answer.more) answer = follows.further();
      on.answered(answer, performance.now() - began);
    },
    waiting: false,
    end() {
      ended = true;
    },
  };
}
