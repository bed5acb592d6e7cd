/** The piece that is drawn on its way off, in place of where it stands; null while none is. */
import { useMemo } from 'react';
import { add, type Header, norm, type RemovalPiece, rotate, unit } from '../../../geometry';
import type { Vec3 } from '../../../shared/vec3';
import type { Ball } from '../viewport/camera/fit';
import { headerBalls } from '../viewport/model/content';
import { useAnswers } from './answers';
import { useRoomLook } from './look';

export type Lifted = {
  readonly piece: RemovalPiece;
  /** Keys as in `viewState`: `runner/r1`, `merge/m1`, `flange/f1`. */
  readonly keys: ReadonlySet<string>;
};

export function useLifted(): Lifted | null {
  const index = useRoomLook((s) => s.coming?.piece ?? null);
  const piece = useAnswers((s) => (index === null ? null : (s.removal.value?.pieces[index] ?? null)));
  return useMemo(() => {
    if (!piece) return null;
    const { runners, merges, flanges } = piece;
    return {
      piece,
      keys: new Set([
        ...runners.map((id) => `runner/${id}`),
        ...merges.map((id) => `merge/${id}`),
        ...flanges.map((id) => `flange/${id}`),
      ]),
    };
  }, [piece]);
}

/** Round the piece at places along its path, for a fit that holds its way; only roughly, as a fit asks. */
export function liftedBalls(header: Header, { piece }: Lifted): Ball[] {
  const { runners, merges, path } = piece;
  const own = headerBalls({
    ...header,
    ports: new Map(),
    design: { ...header.design, flanges: [] },
    runners: header.runners.filter(({ runner }) => runners.includes(runner.id)),
    merges: new Map([...header.merges].filter(([id]) => merges.includes(id))),
  });
  return path.flatMap(({ turn, move }) => {
    const angle = norm(turn);
    const place = (p: Vec3): Vec3 => add(angle > 0 ? rotate(p, unit(turn), angle) : p, move);
    return own.map(({ at, radius }) => ({ at: place(at), radius }));
  });
}

/** What stays in its place, to be named there. */
export function useUnlifted(header: Header | null, lifted: Lifted | null): Header | null {
  return useMemo(() => {
    if (!header || !lifted) return header;
    return {
      ...header,
      runners: header.runners.filter(({ runner }) => !lifted.keys.has(`runner/${runner.id}`)),
      merges: new Map([...header.merges].filter(([id]) => !lifted.keys.has(`merge/${id}`))),
    };
  }, [header, lifted]);
}
