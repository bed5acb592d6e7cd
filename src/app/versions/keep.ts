/** Keeping the design as it stands, under a name of its own or that of the step it was reached by. */
import { history } from '../history';
import { linesOf, tell, tellFailure } from '../notices';
import { shelf, useShelf } from '../shelf/browserShelf';

/** @param name blank: what `suggestedName` says */
export async function keepVersionNow(name = ''): Promise<void> {
  const kept = name.trim() || suggestedName();
  try {
    await shelf.keepVersion(kept);
    tell(`Kept as “${kept}”`, 'Versions are listed under Past.');
  } catch (error) {
    tellFailure('The version was not kept', ...linesOf(error));
  }
}

export const suggestedName = (): string =>
  versionName(
    history.store.getState().past.at(-1)?.label,
    useShelf.getState().versions.map((v) => v.name),
  );

/** "As opened", "Balance", "Balance 2" …: the first that is not taken. */
export function versionName(step: string | undefined, taken: readonly string[]): string {
  const base = step ?? 'As opened';
  for (let n = 1; ; n++) {
    const name = n === 1 ? base : `${base} ${n}`;
    if (!taken.includes(name)) return name;
  }
}
