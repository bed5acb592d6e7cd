/** The shop folder, written by a worker and handed over as one zip. */
import { documents } from '../document';
import { useJobs } from '../jobs';
import { dismiss, linesOf, tell, tellFailure } from '../notices';
import { Cancelled, startTask } from '../workers/task';
import { download } from './save';

export async function exportShop(): Promise<void> {
  const { settled: design, meshes, fileName } = documents.store.getState();
  if (!design || useJobs.getState().running) return;
  dismiss();
  const folder = `${stem(fileName)} shop`;
  const task = startTask({ job: 'shop', design, meshes, folder });
  useJobs.setState({ running: 'shop', stop: task.cancel });
  try {
    const { zip, fileCount, problemCount, leftOut } = await task.result;
    useJobs.setState({ running: null, stop: null });
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
    say(`${name}: ${fileCount} files`, ...leftOut, ...caution);
  } catch (error) {
    useJobs.setState({ running: null, stop: null });
    if (!(error instanceof Cancelled)) tellFailure('The shop folder was not written', ...linesOf(error));
  }
}

const stem = (fileName: string): string => fileName.replace(/(\.evenrun)?\.json$/i, '') || 'design';
