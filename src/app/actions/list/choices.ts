/** Lists that an action asks to choose from: the examples that come with the app, the steps of history. */
import { clock } from '../../format';
import { firstLabel, type HistoryState, history } from '../../history';
import { linesOf, tellFailure } from '../../notices';
import { type Example, listExamples, openExample } from '../open';
import type { Action } from './action';
import { openSheet } from './listState';

export const exampleChoices = (examples: readonly Example[]): Action[] =>
  examples.map(({ file, title, summary }) => ({
    id: `example.${file}`,
    name: title,
    group: 'Examples',
    detail: summary,
    also: summary,
    run: () => openExample(file),
  }));

export async function chooseExample(): Promise<void> {
  try {
    const actions = exampleChoices(await listExamples());
    const none = 'No example goes by these words. Try fewer letters, or another word.';
    openSheet({ title: 'Examples', ask: 'Find an example', hint: 'Which one?', none, actions });
  } catch (error) {
    tellFailure('The examples cannot be listed', ...linesOf(error));
  }
}

/** The newest first; the one where we stand is there to be seen, not to be gone to. */
export function stepChoices({ past, future, dropped }: HistoryState): Action[] {
  const here = past.length;
  const first = { label: firstLabel(dropped), at: null };
  return [first, ...past, ...future]
    .map(({ label, at }, k): Action => {
      const group = k > here ? 'Taken back' : 'Made';
      return {
        id: `history.step-${k}`,
        name: label,
        group,
        detail: at === null ? '' : clock(at),
        ready: () => k !== here,
        why: () => 'here now',
        run: () => history.jump(k),
      };
    })
    .reverse();
}

export function chooseStep(): void {
  const actions = stepChoices(history.store.getState());
  const none = 'No step goes by these words. Try fewer letters, or another word.';
  openSheet({
    title: 'Steps, the newest first',
    ask: 'Find a step',
    hint: 'Back or forth to which step?',
    none,
    actions,
  });
}
