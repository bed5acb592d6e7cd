/** Opening a design: from a picker, a drop or the examples. What is open stays as it is until the new one is known good. */
import { writeDesign } from '../../../shared/design/write';
import { documents } from '../document';
import { useJobs } from '../jobs';
import { dismiss, linesOf, tell, tellFailure } from '../notices';
import { useSession } from '../session';
import { shelf } from '../shelf/browserShelf';
import type { FileLink } from '../storage/kept';
import type { Origin } from '../storage/keptDesign';
import { type Handed, type NamedBytes, readFiles } from './readFiles';

export async function openFiles(files: readonly File[]): Promise<void> {
  if (files.length === 0) return;
  await openBytes(
    files.map((f) => f.name).join(', '),
    Promise.all(files.map(async (f) => ({ name: f.name, bytes: new Uint8Array(await f.arrayBuffer()) }))),
  );
}

export type Example = { readonly file: string; readonly title: string; readonly summary: string };

const EXAMPLES = './examples';

export async function listExamples(): Promise<Example[]> {
  const answer = await fetch(`${EXAMPLES}/index.json`);
  if (!answer.ok) throw new Error(`The list of examples is missing (${answer.status}).`);
  return (await answer.json()) as Example[];
}

/** @param quietly for the start, when there is nothing to lose and nothing to announce */
export async function openExample(file: string, quietly = false): Promise<void> {
  await openBytes(file, fetchExample(file), 'example', quietly);
}

async function fetchExample(file: string): Promise<NamedBytes[]> {
  const design = await fetchBytes(file);
  const { missing } = readFiles([design]);
  return [design, ...(await Promise.all(missing.map(fetchBytes)))];
}

async function fetchBytes(name: string): Promise<NamedBytes> {
  const answer = await fetch(`${EXAMPLES}/${encodeURIComponent(name)}`);
  if (!answer.ok) throw new Error(`${name} is missing from the examples (${answer.status}).`);
  return { name, bytes: new Uint8Array(await answer.arrayBuffer()) };
}

async function openBytes(
  names: string,
  reading: Promise<NamedBytes[]>,
  origin: Origin = 'file',
  quietly = false,
  link: FileLink | null = null,
): Promise<void> {
  let handed: Handed;
  try {
    handed = readFiles(await reading);
  } catch (error) {
    tellFailure(`${names} was not opened`, ...linesOf(error));
    return;
  }
  if (!handed.design) return addMeshes(handed);
  const { design, fileName } = handed.design;
  useJobs.getState().cancel();
  useSession.setState({ selected: null, selection: [], hovered: null, mark: null });
  const known = shelf.find(fileName, writeDesign(design));
  if (known && handed.missing.length === 0 && handed.meshes.size === 0) await shelf.returnTo(known.id);
  else shelf.open(design, fileName, handed.meshes, origin, link);
  useSession.getState().ask({ kind: 'fit' });
  if (handed.missing.length > 0)
    tellFailure(
      `${handed.missing.join(', ')} not found`,
      `The design names ${handed.missing.length > 1 ? 'these meshes' : 'this mesh'} as surroundings. Open ${handed.missing.length > 1 ? 'them' : 'it'} too, or clearances to ${handed.missing.length > 1 ? 'them' : 'it'} stay unmeasured.`,
    );
  else if (quietly) return;
  else dismiss();
}

function addMeshes({ meshes }: Handed): void {
  if (!documents.store.getState().design) {
    tellFailure('A mesh alone cannot be opened', 'Open the design that names it, or both together.');
    return;
  }
  documents.addMeshes(meshes);
  tell(`${[...meshes.keys()].join(', ')} read`);
}
