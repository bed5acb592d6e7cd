/**
 * Whether the gas of a run left what its table of heats holds for, however good its input was: the scheme goes on there with heats
 * that are guessed, so a reader has to be told. Looks on and changes nothing. K, m, s.
 */
import type { BeyondTable } from '../report';
import { COLDEST_MIXTURE, HOTTEST_MIXTURE } from '../rig/limits';
import { pipeOfCell } from '../scheme/firstState';
import { centreOf, type PipeGrid } from '../scheme/grid';

export type TableWatch = {
  look(time: number, temperature: Float64Array): void;
  found(): BeyondTable | null;
};

export function watchTable(ids: readonly string[], pipes: readonly PipeGrid[]): TableWatch {
  let since = -1;
  let at = 0;
  let cell = -1;
  let kelvin = 0;
  /** How many times as hot, or as cold, as the table's end. */
  let furthest = 1;
  return {
    look(time, temperature) {
      for (let i = 0; i < temperature.length; i++) {
        const t = temperature[i]!;
        if (t <= HOTTEST_MIXTURE && t >= COLDEST_MIXTURE) continue;
        const far = t > HOTTEST_MIXTURE ? t / HOTTEST_MIXTURE : COLDEST_MIXTURE / t;
        if (since < 0) since = time;
        if (!(far > furthest)) continue;
        furthest = far;
        at = time;
        cell = i;
        kelvin = t;
      }
    },
    found() {
      if (cell < 0) return null;
      const k = pipeOfCell(pipes, cell);
      return { pipe: ids[k]!, x: centreOf(pipes[k]!, cell), time: at, temperature: kelvin, since };
    },
  };
}
