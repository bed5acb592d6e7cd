/**
 * A file that the browser lets us write again, and whether writing to it now would do harm. Everything is asked of the
 * handle itself, so that all of it can be tried without a browser.
 */
import type { FileLink } from '../storage/kept';

type Mode = { readonly mode: 'readwrite' };
type Writing = { write(data: Blob): Promise<void>; close(): Promise<void>; abort(): Promise<void> };

/** What we use of the browser's own handle; asking for leave is missing where leave is given with the handle. */
export type FileOnDisk = {
  readonly name: string;
  queryPermission?(mode: Mode): Promise<PermissionState>;
  requestPermission?(mode: Mode): Promise<PermissionState>;
  getFile(): Promise<File>;
  createWritable(): Promise<Writing>;
};

export type DiskLink = FileLink<FileOnDisk>;

/** `changed`: by something else since it was last read or written here. `gone`: moved, renamed or deleted. */
export type Standing = 'ready' | 'refused' | 'changed' | 'gone';

const WRITE: Mode = { mode: 'readwrite' };
const nameOf = (error: unknown): string => (error as { name?: string } | null)?.name ?? '';

/** Asks the user for leave to write where the browser wants that. To be called from a click or a key. */
async function mayWrite(file: FileOnDisk): Promise<boolean> {
  if ((await file.queryPermission?.(WRITE)) === 'granted') return true;
  const answer = await file.requestPermission?.(WRITE);
  return answer === undefined || answer === 'granted';
}

/** Whether the file can be written without harm. */
export async function standingOf({ handle, modified }: DiskLink): Promise<Standing> {
  try {
    if (!(await mayWrite(handle))) return 'refused';
    return (await handle.getFile()).lastModified === modified ? 'ready' : 'changed';
  } catch (error) {
    return standingAfter(error);
  }
}

/** What a failure says about the file. @throws the failure, where it says nothing about that */
export function standingAfter(error: unknown): Standing {
  const name = nameOf(error);
  if (name === 'NotFoundError') return 'gone';
  if (name === 'NotAllowedError' || name === 'SecurityError') return 'refused';
  throw error;
}

/**
 * Writes all of it or nothing: the browser writes beside the file and moves that into its place when it is closed.
 * @returns the link to the file as it is then
 */
export async function writeOver(handle: FileOnDisk, data: Blob): Promise<DiskLink> {
  const writing = await handle.createWritable();
  try {
    await writing.write(data);
    await writing.close();
  } catch (error) {
    await writing.abort().catch(() => {});
    throw error;
  }
  return { handle, modified: (await handle.getFile()).lastModified };
}

/** Where the user thought better of a picker. */
export const isSecondThought = (error: unknown): boolean => nameOf(error) === 'AbortError';
