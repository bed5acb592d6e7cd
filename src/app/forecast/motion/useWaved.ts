/** Which runners and collectors of the shown header the playing run has waves for, and in which pipe; nothing while none plays. */
import { useMemo } from 'react';
import { fieldOf, type WaveField } from '../../../pulse/forecast/waveField';
import type { PathPipe } from '../../../pulse/path/types';
import type { PipePicture } from '../../../pulse/report';
import { type Spread, spreadOf } from '../waves/roll';
import { useMotion } from './state';

export type Waved = {
  readonly field: WaveField;
  readonly spread: Spread;
  /** By `runner/…` or `merge/…`. */
  readonly pipes: ReadonlyMap<string, { readonly pipe: PathPipe; readonly picture: PipePicture }>;
};

export function useWaved(): Waved | null {
  const run = useMotion((s) => s.run);
  const quantity = useMotion((s) => s.quantity);
  return useMemo(() => {
    const waves = run?.answer.waves;
    if (!run || !waves) return null;
    const field = fieldOf(waves);
    const pipes = new Map<string, { pipe: PathPipe; picture: PipePicture }>();
    for (const pipe of run.path.pipes) {
      const picture = field.pipes.get(pipe.id);
      if (!picture || !pipe.part) continue;
      const key = 'runner' in pipe.part ? `runner/${pipe.part.runner}` : `merge/${pipe.part.merge}`;
      if (!pipes.has(key)) pipes.set(key, { pipe, picture });
    }
    const spread = spreadOf(
      waves,
      run.path.pipes.map(({ id }) => id),
      quantity,
    );
    return spread && { field, spread, pipes };
  }, [run, quantity]);
}
