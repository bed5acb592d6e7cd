/** Moves a piece along its path in the picture: by itself, or by hand on a slide. Where less motion is asked for, by hand only. */
import { useEffect, useRef } from 'react';
import type { RemovalPose } from '../../../../geometry';
import { useSession } from '../../session';
import { useRoomLook } from '../look';

const PLAY_MS = 5000;
const STEPS = 1000;

const still = (): boolean => matchMedia('(prefers-reduced-motion: reduce)').matches;

export function PlayPiece({ index, path }: { readonly index: number; readonly path: readonly RemovalPose[] }) {
  const coming = useRoomLook((s) => (s.coming?.piece === index ? s.coming : null));
  const set = useRoomLook((s) => s.set);
  const playing = coming?.playing ?? false;
  useEffect(() => {
    if (!playing) return;
    let frame = 0;
    let last: number | null = null;
    const step = (time: number) => {
      const { coming: now } = useRoomLook.getState();
      if (!now?.playing || now.piece !== index) return;
      const along = Math.min(1, now.along + (last === null ? 0 : time - last) / PLAY_MS);
      last = time;
      set({ coming: { piece: index, along, playing: along < 1 } });
      if (along < 1) frame = requestAnimationFrame(step);
    };
    frame = requestAnimationFrame(step);
    return () => cancelAnimationFrame(frame);
  }, [playing, index, set]);
  // A path that changed is another: the piece goes back to its place.
  // biome-ignore lint/correctness/useExhaustiveDependencies: when the path is another
  useEffect(() => () => set({ coming: null }), [path, set]);
  const along = coming?.along ?? 0;
  const shown = coming !== null;
  // Its whole way is to be seen, and once it is back on, what there is.
  const wasShown = useRef(false);
  useEffect(() => {
    if (shown !== wasShown.current) useSession.getState().ask({ kind: 'fit' });
    wasShown.current = shown;
  }, [shown]);
  const play = () => {
    set({ coming: { piece: index, along: along >= 1 ? 0 : along, playing: true } });
  };
  return (
    <div className="room-play">
      {!still() && (
        <button
          type="button"
          className="button small"
          onClick={() => (playing ? set({ coming: { piece: index, along, playing: false } }) : play())}
        >
          {playing ? 'Pause' : 'Play'}
        </button>
      )}
      <input
        type="range"
        aria-label="How far off it is"
        min={0}
        max={STEPS}
        value={Math.round(along * STEPS)}
        onChange={(event) =>
          set({ coming: { piece: index, along: Number(event.target.value) / STEPS, playing: false } })
        }
      />
      <button type="button" className="button small" disabled={coming === null} onClick={() => set({ coming: null })}>
        Back on
      </button>
    </div>
  );
}
