/**
 * Puts the shop folder on disk without halves: everything is written to a temporary folder beside it, then moved, the
 * manifest last. Of what is there already only what an earlier run wrote is touched: its manifest names those files, and
 * one that was changed since is kept. Files of someone else's under our names are never overwritten.
 */
import { createHash } from 'node:crypto';
import {
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmdirSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { dirname, join } from 'node:path';
import type { NamedFile } from '../formats/zip/zip';
import { MANIFEST, MANIFEST_FORMAT, type Manifest } from '../shop/manifest';
import { explaining, insistParent, temporaryBeside } from './files';
import { UnusableInput } from './io';

export type Written = {
  /** Files of an earlier run that this one does not have. */
  readonly removed: readonly string[];
  /** Likewise, but changed by someone since. */
  readonly kept: readonly string[];
};

/** Found out before long work starts. */
export function insistFolder(folder: string): void {
  explaining(folder, 'write', () => {
    insistParent(folder);
    const found = statSync(folder, { throwIfNoEntry: false });
    if (found && !found.isDirectory()) throw new UnusableInput(`${folder}: a file, where a folder is wanted`);
    earlierFiles(folder);
  });
}

export function writeFolder(folder: string, files: readonly NamedFile[]): Written {
  return explaining(folder, 'write', () => {
    const earlier = earlierFiles(folder);
    for (const { name, bytes } of files) insistOurs(join(folder, name), earlier.has(name), bytes);
    const temporary = temporaryBeside(folder);
    try {
      for (const { name, bytes } of files) {
        mkdirSync(dirname(join(temporary, name)), { recursive: true });
        writeFileSync(join(temporary, name), bytes);
      }
      if (!existsSync(folder) || readdirSync(folder).length === 0) {
        if (existsSync(folder)) rmdirSync(folder);
        renameSync(temporary, folder);
        return { removed: [], kept: [] };
      }
      for (const { name } of files) {
        mkdirSync(dirname(join(folder, name)), { recursive: true });
        renameSync(join(temporary, name), join(folder, name));
      }
    } finally {
      rmSync(temporary, { recursive: true, force: true });
    }
    return removeStale(folder, earlier, new Set(files.map((f) => f.name)));
  });
}

/**
 * What stands where a file is to go must be nothing, a file of an earlier run, or the very same file: a run that was
 * interrupted before its manifest was in place can then simply be run again.
 */
function insistOurs(path: string, named: boolean, bytes: Uint8Array): void {
  const found = statSync(path, { throwIfNoEntry: false });
  if (!found || (found.isFile() && (named || readFileSync(path).equals(bytes)))) return;
  throw new UnusableInput(`${path}: not of an earlier run, and not overwritten; choose another folder`);
}

function removeStale(folder: string, earlier: ReadonlyMap<string, string>, now: ReadonlySet<string>): Written {
  const removed: string[] = [];
  const kept: string[] = [];
  for (const [name, hash] of earlier) {
    const path = join(folder, name);
    if (now.has(name) || !statSync(path, { throwIfNoEntry: false })?.isFile()) continue;
    const same = createHash('sha256').update(readFileSync(path)).digest('hex') === hash;
    if (same) rmSync(path);
    (same ? removed : kept).push(name);
  }
  return { removed, kept };
}

/** Names as we write them, and nothing that could lead out of the folder: a manifest is a file anyone can edit. */
const OUR_NAME = /^(?:(?:runners|flanges|transitions|collectors|copes)\/)?[A-Za-z0-9_ -][A-Za-z0-9_. -]*$/;

/** Name → SHA-256 of what an earlier run wrote, its manifest included; empty where there was none. */
function earlierFiles(folder: string): Map<string, string> {
  const path = join(folder, MANIFEST);
  if (!existsSync(path)) return new Map();
  const manifest = parsed(readFileSync(path, 'utf8'));
  if (manifest?.format !== MANIFEST_FORMAT || !Array.isArray(manifest.files))
    throw new UnusableInput(`${path}: not a manifest of an earlier run, and not overwritten; choose another folder`);
  const names = manifest.files.filter((f) => typeof f?.name === 'string' && OUR_NAME.test(f.name));
  return new Map([...names.map((f) => [f.name, f.sha256] as const), [MANIFEST, ''] as const]);
}

function parsed(text: string): Manifest | null {
  try {
    return JSON.parse(text) as Manifest | null;
  } catch {
    return null;
  }
}
