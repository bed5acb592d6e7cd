/** The shop folder, written by a worker and handed over as one zip. */
import { documents } from '../document';
import { useJobs } from '../jobs';
import { dismiss, linesOf, tell, tellFailure } from '../notices';
import { usePaper } from '../paperChoice';
import { Cancelled, startTask } from '../workers/task';
import { download } from './save';

export async function exportShop(): Promise<void> {
  const { settled: design, meshes, fileName } = documents.store.getState();
  if (!design || useJobs.getState().running) return;
  dismiss();
  const folder = `${stem(fileName)} shop`;
  const task = startTask({ job: 'shop', design, meshes, folder, onPaper: usePaper.getState() }, (doing) => {
    if (useJobs.getState().stop === task.cancel) useJobs.setState({ doing });
  });
  useJobs.setState({ running: 'shop', stop: task.cancel, doing: null });
  try {
    const { zip, fileCount, problemCount, leftOut, warnings } = await task.result;
    useJobs.setState(IDLE);
    // A download and not a file picker: by now the browser no longer counts this as the user's click.
    const name = `${folder}.zip`;
    download(new Blob([zip], { type: 'application/zip' }), name);
    const caution =
      problemCount === 0
        ? []
        : [
            `The design breaks ${problemCount === 1 ? 'a rule' : `${problemCount} rules`}: see Problems before cutting.`,
          ];
    const say = caution.length + leftOut.length > 0 ? tellFailure : tell;
    say(`${name}: ${fileCount} files`, ...few(leftOut), ...caution, ...few(warnings));
  } catch (error) {
    // A job that was given up is nobody's any more: another may be under way by now.
    if (useJobs.getState().stop === task.cancel) useJobs.setState(IDLE);
    if (!(error instanceof Cancelled)) tellFailure('The shop folder was not written', ...linesOf(error));
  }
}

const IDLE = { running: null, stop: null, doing: null };

const MOST = 6;

/** The list of parts has all of them, each with its place. */
const few = (lines: readonly string[]): readonly string[] =>
  lines.length > MOST ? [...lines.slice(0, MOST), `and ${lines.length - MOST} more, under Parts`] : lines;

const stem = (fileName: string): string => fileName.replace(/(\.evenrun)?\.json$/i, '') || 'design';
