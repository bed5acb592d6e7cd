/** Keeping the design as it stands, under a name that can be changed: the step it was reached by, where there is one. */
import { history } from '../history';
import { linesOf, tell, tellFailure } from '../notices';
import { shelf, useShelf } from '../shelf/browserShelf';

export async function keepVersionNow(): Promise<void> {
  const name = versionName(
    history.store.getState().past.at(-1)?.label,
    useShelf.getState().versions.map((v) => v.name),
  );
  try {
    await shelf.keepVersion(name);
    tell(`Kept as “${name}”`, 'Versions are listed under Past.');
  } catch (error) {
    tellFailure('The version was not kept', ...linesOf(error));
  }
}

/** "As opened", "Balance", "Balance 2" …: the first that is not taken. */
export function versionName(step: string | undefined, taken: readonly string[]): string {
  const base = step ?? 'As opened';
  for (let n = 1; ; n++) {
    const name = n === 1 ? base : `${base} ${n}`;
    if (!taken.includes(name)) return name;
  }
}
