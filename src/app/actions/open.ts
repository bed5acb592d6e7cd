/** Opening a design: from a picker, a drop or the examples. What is open stays as it is until the new one is known good. */
import { writeDesign } from '../../../shared/design/write';
import { documents } from '../document';
import { canPick, type Picked, pickFiles } from '../files/pickers';
import { useJobs } from '../jobs';
import { dismiss, linesOf, tell, tellFailure } from '../notices';
import { useSession } from '../session';
import { kept, shelf } from '../shelf/browserShelf';
import type { FileLink } from '../storage/kept';
import type { Origin } from '../storage/keptDesign';
import { type Handed, type NamedBytes, readFiles } from './readFiles';

export const openFiles = (files: readonly File[]): Promise<void> =>
  openPicked(files.map((file) => ({ file, handle: null })));

/** Files with their handles where the browser gave them: the design is saved back to its own. */
export async function openPicked(picked: readonly Picked[]): Promise<void> {
  if (picked.length === 0) return;
  await openBytes(
    picked.map(({ file }) => file.name).join(', '),
    Promise.all(picked.map(async ({ file: f }) => ({ name: f.name, bytes: new Uint8Array(await f.arrayBuffer()) }))),
    'file',
    false,
    (fileName) => {
      const found = picked.find(({ file }) => file.name === fileName);
      return found?.handle ? { handle: found.handle, modified: found.file.lastModified } : null;
    },
  );
}

/** Asks which, by the browser's picker that answers handles, else by its plain one. */
export async function askAndOpen(): Promise<void> {
  if (!canPick()) return askPlainly();
  try {
    await openPicked(await pickFiles());
  } catch (error) {
    tellFailure('Nothing was opened', ...linesOf(error));
  }
}

function askPlainly(): void {
  const input = document.createElement('input');
  input.type = 'file';
  input.multiple = true;
  input.accept = '.json,.stl,.obj,.ply,.glb';
  input.onchange = () => void openFiles([...(input.files ?? [])]);
  input.click();
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
  const { missing } = await readFiles([design]);
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
  linkOf: (fileName: string) => FileLink | null = () => null,
): Promise<void> {
  let handed: Handed;
  try {
    handed = await readFiles(await reading);
  } catch (error) {
    tellFailure(`${names} was not opened`, ...linesOf(error));
    return;
  }
  if (!handed.design) return addMeshes(handed);
  const { design, fileName } = handed.design;
  useJobs.getState().cancel();
  const known = shelf.find(fileName, writeDesign(design));
  const link = linkOf(fileName);
  if (known && handed.missing.length === 0 && handed.meshes.size === 0) {
    await shelf.returnTo(known.id);
    if (link) await kept.setLink(known.id, link).catch(() => {});
  } else shelf.open(design, fileName, handed.meshes, origin, link);
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
