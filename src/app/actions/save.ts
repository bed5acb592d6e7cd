/**
 * Bytes to the user's disk. A design that came from a file, or was saved to one, goes back to it where the browser lets
 * us; else into a file that is asked for; else as a download.
 */
import { writeDesign } from '../../../shared/design/write';
import { documents } from '../document';
import { type DiskLink, type FileOnDisk, standingAfter, standingOf, writeOver } from '../files/fileOnDisk';
import { canPickPlace, pickPlace } from '../files/pickers';
import { putAside, useQuestion } from '../files/question';
import { linesOf, tell, tellFailure } from '../notices';
import { kept } from '../shelf/browserShelf';

/** To the file it belongs to; asked for where there is none. True once the design lies in it. */
export async function saveDesign(): Promise<boolean> {
  const { id } = documents.store.getState();
  const link = (await kept.link(id).catch(() => null)) as DiskLink | null;
  if (!link) return saveAs();
  return telling(async () => {
    const standing = await standingOf(link);
    if (standing === 'ready') return overwrite(link);
    useQuestion.setState({ question: { id, link, standing } });
    return false;
  });
}

/** To a file that is asked for, which it belongs to from then on. */
export function saveAs(): Promise<boolean> {
  return telling(async () => {
    const { settled: design, fileName, id } = documents.store.getState();
    if (!design) return false;
    if (!canPickPlace()) {
      download(asFile(writeDesign(design)), fileName);
      return saved(id, () => documents.markSaved(design, fileName), fileName);
    }
    const handle = await pickPlace(fileName, 'Evenrun design', 'application/json', '.json');
    return handle ? into(handle) : false;
  });
}

/** Whatever the file holds now. */
export function overwrite(link: DiskLink): Promise<boolean> {
  return telling(async () => {
    try {
      return await into(link.handle);
    } catch (error) {
      const standing = standingAfter(error);
      const { id } = documents.store.getState();
      if (standing !== 'ready') useQuestion.setState({ question: { id, link, standing } });
      return false;
    }
  });
}

async function into(handle: FileOnDisk): Promise<boolean> {
  const { settled: design, id } = documents.store.getState();
  if (!design) return false;
  const link = await writeOver(handle, asFile(writeDesign(design)));
  // Not kept, the place is asked for again next time.
  await kept.setLink(id, link).catch(() => {});
  return saved(id, () => documents.markSaved(design, handle.name), handle.name);
}

/** Another design may have been opened while this one was being written. */
function saved(id: string, mark: () => void, name: string): true {
  putAside();
  if (documents.store.getState().id === id) mark();
  tell(`Saved as ${name}`);
  return true;
}

const asFile = (text: string) => new Blob([text], { type: 'application/json' });

async function telling(work: () => Promise<boolean>): Promise<boolean> {
  try {
    return await work();
  } catch (error) {
    tellFailure('The design was not saved', ...linesOf(error));
    return false;
  }
}

/** The name it was given; null where the user thought better of it. */
export async function saveBlob(
  blob: Blob,
  suggestedName: string,
  description: string,
  extension: string,
): Promise<string | null> {
  if (!canPickPlace()) {
    download(blob, suggestedName);
    return suggestedName;
  }
  const handle = await pickPlace(suggestedName, description, blob.type, extension);
  if (!handle) return null;
  await writeOver(handle, blob);
  return handle.name;
}

/** How long a download may take to start before its address is given back. */
const DOWNLOAD_GRACE_MS = 60_000;

export function download(blob: Blob, name: string): void {
  const url = URL.createObjectURL(blob);
  const link = document.createElement('a');
  link.href = url;
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(url), DOWNLOAD_GRACE_MS);
}
