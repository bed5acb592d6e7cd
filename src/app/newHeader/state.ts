/** The page of a new header: whether it is open, what was typed (kept while the session lasts), and the making of it. */
import { create } from 'zustand';
import { formProblems } from '../../../shared/engine/formProblems';
import { useJobs } from '../jobs';
import { linesOf, tell, tellFailure } from '../notices';
import { openLay } from '../route/state';
import { useSession } from '../session';
import { shelf } from '../shelf/browserShelf';
import { Cancelled, startTask } from '../workers/task';
import { fileNameOf } from './fileName';
import { filled } from './formOf';
import { FIRST_WISH, type Wish } from './wish';

type NewHeader = {
  readonly open: boolean;
  readonly wish: Wish;
  /** While a header is being drawn: how to stop. */
  readonly stop: (() => void) | null;
};

export const useNewHeader = create<NewHeader>()(() => ({ open: false, wish: FIRST_WISH, stop: null }));

export const openNewHeader = (): void => useNewHeader.setState({ open: true });

export function closeNewHeader(): void {
  useNewHeader.getState().stop?.();
  useNewHeader.setState({ open: false, stop: null });
}

export const change = (to: (wish: Wish) => Wish): void => useNewHeader.setState(({ wish }) => ({ wish: to(wish) }));
export const put = (part: Partial<Wish>): void => change((wish) => ({ ...wish, ...part }));

/** Draws the header in a worker and opens it as a design that no file holds yet. Where it fails, the form stays as it is. */
export async function makeHeader(): Promise<void> {
  const { wish, stop } = useNewHeader.getState();
  const { form } = filled(wish);
  if (stop || formProblems(form).length > 0) return;
  const task = startTask({ job: 'draft', form, meshes: null });
  useNewHeader.setState({ stop: task.cancel });
  try {
    const { design, report, notes } = await task.result;
    useNewHeader.setState({ stop: null });
    useJobs.getState().cancel();
    // What was open is kept on the shelf.
    shelf.open(design, fileNameOf(form.title), new Map(), 'made');
    useSession.getState().ask({ kind: 'fit' });
    useNewHeader.setState({ open: false });
    // The engine stays for another try at it; the name is taken.
    put({ title: null });
    // What could only be drawn roughly is a case for a longer search.
    if (!report.ok) openLay();
    const say = report.ok ? tell : tellFailure;
    say(report.ok ? `${form.title}: drawn` : `${form.title}: drawn, not every rule holds`, ...notes);
  } catch (error) {
    useNewHeader.setState({ stop: null });
    if (!(error instanceof Cancelled)) tellFailure('The header was not drawn', ...linesOf(error));
  }
}
