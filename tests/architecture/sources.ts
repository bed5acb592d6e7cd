/** The project's own files, read for the tests of this folder. Paths from the root, with forward slashes. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

export const ROOT = fileURLToPath(new URL('../../', import.meta.url));
const NOT_OURS = new Set(['node_modules', 'dist', 'coverage', '.git', 'out']);
const TEXT =
  /\.(ts|tsx|mts|mjs|js|json|jsonc|md|html|css|svg|yml|sh|py|txt|csv)$|^\.(npmrc|gitignore|editorconfig)$|^(run|LICENSE)$/;

/** Path → text of every text file of ours under a folder. */
export function sources(folder = ''): ReadonlyMap<string, string> {
  const found = new Map<string, string>();
  const walk = (path: string): void => {
    for (const entry of readdirSync(join(ROOT, path), { withFileTypes: true })) {
      const inner = path === '' ? entry.name : `${path}/${entry.name}`;
      if (NOT_OURS.has(entry.name)) continue;
      if (entry.isDirectory()) walk(inner);
      else if (TEXT.test(entry.name)) found.set(inner, readFileSync(join(ROOT, inner), 'utf8'));
    }
  };
  walk(folder);
  return found;
}

export const isCode = (path: string): boolean => /\.(ts|tsx|mts|mjs)$/.test(path);
