/**
 * Reading what the user names and writing without halves: to a temporary name beside the target, then renamed over it.
 * Every failure becomes one line that names the file.
 */
import { randomUUID } from 'node:crypto';
import {
  accessSync,
  constants,
  existsSync,
  readFileSync,
  realpathSync,
  renameSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { UnusableInput } from './io';

/** @param most bytes; a larger file is refused before it is read */
export function readBytes(path: string, most: number): Uint8Array<ArrayBuffer> {
  return explaining(path, 'read', () => {
    const { size } = regularFile(path);
    if (size > most) throw new UnusableInput(`${path}: the file has ${size} bytes; at most ${most} are read`);
    return new Uint8Array(readFileSync(path));
  });
}

export function readText(path: string, most: number): string {
  const bytes = readBytes(path, most);
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    throw new UnusableInput(`${path}: not UTF-8 text; save it as UTF-8`);
  }
}

/** Found out before long work starts, not after it. */
export function insistWritable(path: string): void {
  explaining(path, 'write', () => {
    insistParent(path);
    if (existsSync(path)) regularFile(path);
    // It is written beside and renamed: the folder must let that be.
    accessSync(dirname(existsSync(path) ? realpathSync(path) : path), constants.W_OK);
  });
}

/** The folder that a new file or folder is to lie in must exist: a mistyped path must not grow folders. */
export function insistParent(path: string): void {
  const parent = dirname(path);
  const found = statSync(parent, { throwIfNoEntry: false });
  if (!found?.isDirectory()) throw new UnusableInput(`${path}: the folder ${parent} does not exist; make it first`);
}

/** Whether two names mean one file, there already or not: links are followed as far as the path exists. */
export const isSamePath = (one: string, other: string): boolean => placeOf(one) === placeOf(other);

function placeOf(path: string): string {
  if (existsSync(path)) return realpathSync(path);
  const parent = dirname(path);
  return join(existsSync(parent) ? realpathSync(parent) : parent, basename(path));
}

/** A link is followed, so that what it points to is replaced and not the link. */
export function writeWhole(path: string, content: string | Uint8Array): void {
  const target = existsSync(path) ? realpathSync(path) : path;
  const temporary = temporaryBeside(target);
  explaining(path, 'write', () => {
    try {
      writeFileSync(temporary, content, { flag: 'wx' });
      renameSync(temporary, target);
    } finally {
      rmSync(temporary, { force: true });
    }
  });
}

/** In the same folder, because only there is a rename one step. */
export const temporaryBeside = (path: string): string =>
  join(dirname(path), `.${basename(path)}.${randomUUID().slice(0, 8)}.tmp`);

function regularFile(path: string) {
  const found = statSync(path, { throwIfNoEntry: false });
  if (!found) throw new UnusableInput(`${path}: no such file`);
  if (found.isDirectory()) throw new UnusableInput(`${path}: a folder, where a file is wanted`);
  if (!found.isFile()) throw new UnusableInput(`${path}: not a regular file`);
  return found;
}

const REASONS: Readonly<Record<string, string>> = {
  EACCES: 'permission denied',
  EPERM: 'not permitted',
  EROFS: 'the disk is read-only',
  ENOSPC: 'the disk is full',
  ENOENT: 'no such file or folder',
  ENOTDIR: 'part of the path is a file, not a folder',
  ENAMETOOLONG: 'the name is too long',
  ELOOP: 'its links lead in a circle',
  EISDIR: 'it is a folder',
  EEXIST: 'something of that name is there',
  EBUSY: 'it is in use elsewhere',
  EDQUOT: 'there is no more room for this user on the disk',
  EFBIG: 'the disk takes no file so large',
  EIO: 'the disk reports a fault',
  EMFILE: 'too many files are open',
  ENFILE: 'too many files are open',
};

/** @param code of the system, such as ENOSPC */
export const reasonOf = (code: string): string => REASONS[code] ?? `the system says ${code}`;

/** Turns the system's errors into a line for people; others pass. */
export function explaining<T>(path: string, verb: 'read' | 'write', act: () => T): T {
  try {
    return act();
  } catch (error) {
    const code = (error as NodeJS.ErrnoException).code;
    if (error instanceof UnusableInput || typeof code !== 'string' || !(error as NodeJS.ErrnoException).syscall)
      throw error;
    throw new UnusableInput(`${path}: cannot ${verb} it: ${reasonOf(code)}`);
  }
}
