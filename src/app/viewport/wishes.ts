/** Answers the session's camera wishes, each once, and shows a newly opened design from its best corner. */
import { useEffect, useRef } from 'react';
import { useDocument } from '../document';
import { useSession } from '../session';
import { type EngineSides, presetAngles } from './camera/presets';
import type { Rig } from './camera/rig';

/** @param ready whether there is a picture and something to show in it */
export function useWishes(rig: Rig, ready: boolean, sides: EngineSides): void {
  const wish = useSession((s) => s.wish);
  const cause = useDocument((s) => s.cause);
  const answered = useRef<unknown>(null);
  const opened = useRef<unknown>(null);
  useEffect(() => {
    if (!ready) return;
    const fresh = cause.kind === 'open' && opened.current !== cause;
    if (fresh) {
      opened.current = cause;
      rig.fitAll(presetAngles('corner', sides), true);
      // The wish that came with the opening asks for no more than this.
      if (wish.kind === 'fit') answered.current = wish;
    }
    if (answered.current === wish) return;
    answered.current = wish;
    if (wish.kind === 'fit') rig.fitAll();
    else if (wish.kind === 'preset') rig.fitAll(presetAngles(wish.preset, sides));
    else rig.look(wish.at, wish.radius);
  }, [rig, ready, sides, wish, cause]);
}
