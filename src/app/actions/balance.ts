/** Balance: the nearest design in which every rule holds and each group's lengths are equal, found in a worker, as one edit. */
import type { BalanceResult } from '../../../geometry';
import type { Design } from '../../../shared/design/types';
import { documents } from '../document';
import { useJobs } from '../jobs';
import { dismiss, linesOf, tellFailure } from '../notices';
import { Cancelled, startTask } from '../workers/task';

/** Points that moved less than this stayed where they are: a millionth of a millimetre, rounding. */
const STAYED = 1e-6;

/** Inlets that were left to choose are a change too, though no point moved. */
function isAnother(before: Design, { design, moved }: BalanceResult): boolean {
  return (
    moved.some((m) => m.distance > STAYED) || design.runners.some((r, i) => r.to.inlet !== before.runners[i]!.to.inlet)
  );
}

export async function balanceDesign(): Promise<void> {
  const { settled: design, meshes } = documents.store.getState();
  if (!design || useJobs.getState().running) return;
  dismiss();
  const task = startTask({ job: 'balance', design, meshes });
  useJobs.setState({ running: 'balance', stop: task.cancel, balanced: null });
  try {
    const result = await task.result;
    useJobs.setState({ running: null, stop: null });
    if (documents.store.getState().settled !== design) {
      tellFailure('The design changed while it was being balanced', 'Nothing was moved. Balance it again.');
      return;
    }
    if (isAnother(design, result)) documents.apply(result.design, 'Balance');
    useJobs.setState({ balanced: { ...result, before: design } });
  } catch (error) {
    useJobs.setState({ running: null, stop: null });
    if (!(error instanceof Cancelled)) tellFailure('The design was not balanced', ...linesOf(error));
  }
}
