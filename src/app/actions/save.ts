/** Bytes to the user's disk: into a file they pick where the browser can, else as a download. */
import { writeDesign } from '../../../shared/design/write';
import { documents } from '../document';
import { linesOf, tell, tellFailure } from '../notices';

type FileHandle = {
  readonly name: string;
  createWritable(): Promise<WritableStream & { close(): Promise<void>; write(data: Blob): Promise<void> }>;
};
type Picker = (options: {
  suggestedName: string;
  types: readonly { description: string; accept: Record<string, string[]> }[];
}) => Promise<FileHandle>;

const picker = (): Picker | null => (globalThis as { showSaveFilePicker?: Picker }).showSaveFilePicker ?? null;

/** True once the design lies in a file. */
export async function saveDesign(): Promise<boolean> {
  const { settled: design, fileName } = documents.store.getState();
  if (!design) return false;
  try {
    const blob = new Blob([writeDesign(design)], { type: 'application/json' });
    const name = await saveBlob(blob, fileName, 'Evenrun design', '.json');
    if (name === null) return false;
    documents.markSaved(design, name);
    tell(`Saved as ${name}`);
    return true;
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
  const pick = picker();
  if (!pick) {
    download(blob, suggestedName);
    return suggestedName;
  }
  try {
    const handle = await pick({ suggestedName, types: [{ description, accept: { [blob.type]: [extension] } }] });
    // The browser writes to a temporary file and moves it into place on close.
    const file = await handle.createWritable();
    await file.write(blob);
    await file.close();
    return handle.name;
  } catch (error) {
    if (error instanceof DOMException && error.name === 'AbortError') return null;
    throw error;
  }
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
