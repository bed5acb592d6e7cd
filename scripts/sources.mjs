/** What is built is made anew where a source is newer. Plain Node: it runs before anything is installed. */
import { readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { ROOT } from './machine.mjs';

/** What both the app and the command line are built from. */
export const SOURCES = ['package-lock.json', 'vite.cli.config.ts', 'shared', 'geometry', 'src'];

/** When the newest of these files, folders searched through, was last written; 0 where there is none. */
export function newest(paths) {
  return paths.reduce((latest, path) => {
    const full = join(ROOT, path);
    const stat = statSync(full, { throwIfNoEntry: false });
    if (!stat) return latest;
    const inside = stat.isDirectory() ? newest(readdirSync(full).map((name) => join(path, name))) : 0;
    return Math.max(latest, stat.mtimeMs, inside);
  }, 0);
}
