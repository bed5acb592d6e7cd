/** Opening a design: from a picker, a drop or the examples. What is open stays as it is until the new one is known good. */
import { writeDesign } from '../../../shared/design/write';
import { documents } from '../document';
import { canPick, type Picked, pickFiles } from '../files/pickers';
import { useJobs } from '../jobs';
import { openImport, useImport } from '../meshes/importing/state';
import { prepared, readTold, useReading } from '../meshes/reading';
import { dismiss, linesOf, tell, tellFailure } from '../notices';
import { useSession } from '../session';
import { kept, shelf } from '../shelf/browserShelf';
import type { FileLink } from '../storage/kept';
import type { Origin } from '../storage/keptDesign';
import { Cancelled } from '../workers/task';
import { type Handed, isDesignName, isMeshName, MESH_TYPES, meshFilesOf, type NamedFile, readFiles } from './readFiles';

export const openFiles = (files: readonly File[]): Promise<void> =>
  openPicked(files.map((file) => ({ file, handle: null })));

/** Files with their handles where the browser gave them: the design is saved back to its own. */
export async function openPicked(picked: readonly Picked[]): Promise<void> {
  if (picked.length === 0) return;
  const [{ file }] = picked as readonly [Picked];
  // Dropped onto the sheet that takes a scan, it is for that: read, or refused there.
  if (useImport.getState().open && picked.length === 1 && !isDesignName(file.name))
    return openImport({ name: file.name, file });
  await openBytes(
    picked.map(({ file }) => file.name).join(', '),
    Promise.resolve(picked.map(({ file }) => ({ name: file.name, file }))),
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
  input.accept = `.json,${MESH_TYPES}`;
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

async function fetchExample(file: string): Promise<NamedFile[]> {
  const design = await fetchFile(file);
  const { missing } = await readFiles([design], readTold);
  return [design, ...(await Promise.all(missing.map(fetchFile)))];
}

async function fetchFile(name: string): Promise<NamedFile> {
  const answer = await fetch(`${EXAMPLES}/${encodeURIComponent(name)}`);
  if (!answer.ok) throw new Error(`${name} is missing from the examples (${answer.status}).`);
  return { name, file: await answer.blob() };
}

/** Whoever opens next has the last word: what is still being read for an earlier one is let go of. */
let opening = 0;

async function openBytes(
  names: string,
  reading: Promise<readonly NamedFile[]>,
  origin: Origin = 'file',
  quietly = false,
  linkOf: (fileName: string) => FileLink | null = () => null,
): Promise<void> {
  const own = ++opening;
  useReading.getState().now?.stop();
  let files: readonly NamedFile[];
  let handed: Handed;
  try {
    files = await reading;
    if (isForImport(files)) return openImport(files[0]!);
    handed = await readFiles(files, readTold);
    const named = handed.design?.design ?? documents.store.getState().settled;
    if (named) await prepared(named, handed.meshes);
  } catch (error) {
    if (!(error instanceof Cancelled)) tellFailure(`${names} was not opened`, ...linesOf(error));
    return;
  }
  if (own !== opening) return;
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

/** A mesh alone, which the design does not name: it has to be asked in which unit it is and where it stands. */
function isForImport(files: readonly NamedFile[]): boolean {
  const { settled } = documents.store.getState();
  const [file] = files;
  return files.length === 1 && settled !== null && isMeshName(file!.name) && !meshFilesOf(settled).includes(file!.name);
}

function addMeshes({ meshes }: Handed): void {
  if (!documents.store.getState().design) {
    tellFailure('A mesh alone cannot be opened', 'Open the design that names it, or both together.');
    return;
  }
  documents.addMeshes(meshes);
  tell(`${[...meshes.keys()].join(', ')} read`);
}
