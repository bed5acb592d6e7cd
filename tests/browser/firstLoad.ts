/**
 * What a browser must have before the built app runs: the page's own scripts and styles, and every script that those import
 * outright. What they import when needed is left out. Read from the built files, in bytes as compressed for the way.
 */
import { existsSync, readdirSync, readFileSync, statSync } from 'node:fs';
import { dirname, join, relative } from 'node:path';
import { gzipSync } from 'node:zlib';

/** Words of each heavy library that no minifier takes out. */
export const TELLTALES: Readonly<Record<string, string>> = {
  'verb-nurbs': 'verb.geom.',
  'pdf-lib': 'No PDF header found',
  'dxf-parser': 'lengths do not match on LTYPE pattern',
  pngjs: 'unrecognised depth',
  'jpeg-js': 'Could not recreate Huffman Table',
  'manifold-3d': 'manifold.wasm',
  'replicad-opencascadejs': 'replicad_single.wasm',
  highs: 'Unable to create the HiGHS solver',
};

export type Loaded = {
  /** Within the built folder, in the order found. */
  readonly files: readonly string[];
  readonly gzipped: number;
  /** Names of the heavy libraries among them. */
  readonly heavy: readonly string[];
};

const LINKED = /<(?:script|link)\b[^>]*?\b(?:src|href)="([^"]+\.(?:js|css))"/g;
/** `import … from "./x.js"`, `import "./x.js"`, `export … from "./x.js"`, however tight; `import("./x.js")` waits. */
const OUTRIGHT = /\b(?:from|import)\s*(["'`])(\.{1,2}\/[^"'`]+?\.js)\1/g;

/** @param dist a built folder with an index.html */
export function firstLoad(dist: string): Loaded {
  const page = join(dist, 'index.html');
  const linked = [...readFileSync(page, 'utf8').matchAll(LINKED)].map(([, file]) => join(dist, file!));
  if (!linked.some((file) => file.endsWith('.js'))) throw new Error(`${page} starts no script.`);
  return loaded(dist, linked);
}

/** The same from any scripts: a part of the app that is imported when needed. */
export function loaded(dist: string, from: readonly string[]): Loaded {
  const found = new Map<string, string>();
  const waiting = [...from];
  for (let file = waiting.shift(); file !== undefined; file = waiting.shift()) {
    if (found.has(file)) continue;
    const text = readFileSync(file, 'utf8');
    found.set(file, text);
    if (file.endsWith('.js'))
      for (const [, , next] of text.matchAll(OUTRIGHT)) waiting.push(join(dirname(file), next!));
  }
  const texts = [...found.values()];
  return {
    files: [...found.keys()].map((file) => relative(dist, file)),
    gzipped: texts.reduce((total, text) => total + gzipSync(text).length, 0),
    heavy: heavyIn(texts),
  };
}

export const heavyIn = (texts: readonly string[]): string[] =>
  Object.entries(TELLTALES)
    .filter(([, words]) => texts.some((text) => text.includes(words)))
    .map(([name]) => name);

const SOURCES = ['shared', 'geometry', 'src', 'public', 'index.html', 'vite.config.ts', 'package-lock.json'];

/** Why the built folder does not show what the sources say, with the remedy; null where it does. */
export function staleness(root: string, dist: string): string | null {
  const page = join(dist, 'index.html');
  if (!existsSync(page)) return 'dist/ is missing: run npm run build first.';
  const built = statSync(page).mtimeMs;
  const newer = SOURCES.flatMap((name) => filesUnder(join(root, name))).find((file) => statSync(file).mtimeMs > built);
  return newer ? `dist/ is older than ${relative(root, newer)}: run npm run build first.` : null;
}

function filesUnder(path: string): string[] {
  if (!statSync(path).isDirectory()) return [path];
  return readdirSync(path, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name));
}
