/** The two runs that are held beside each other: those that were asked for, else the first two that are there. */
import type { Run } from '../runs';
import { layBeside, type Picked, pick, type Shown, useShown } from '../shown';

export function pairOf({
  chosen,
  runs,
  pair,
}: Pick<Shown, 'chosen' | 'runs' | 'pair'>): readonly [Run | null, Run | null] {
  const there = chosen.flatMap((kind) => runs.get(kind) ?? []);
  const asked = pair?.map((kind) => there.find(({ subject }) => subject.kind === kind));
  if (asked?.[0] && asked[1]) return [asked[0], asked[1]];
  return [there[0] ?? null, there[1] ?? null];
}

/** Looks at a speed closely, with the other of both beside it where nobody said what is to lie there. */
export function pickInPair(picked: Picked): void {
  const shown = useShown.getState();
  const other = pairOf(shown).find((run) => run && run.subject.kind !== picked.kind);
  if (shown.beside === null && other) layBeside(other.subject.kind);
  pick(picked);
}
