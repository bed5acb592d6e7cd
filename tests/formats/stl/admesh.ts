/** What admesh, an outside judge of STL files, says of one. It always exits 0, so what it prints is read. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { test } from 'vitest';

const installed = spawnSync('admesh', ['--version']).status === 0;

/** A test that needs the judge: skipped with a word where it is missing, but never in CI, where a missing reference is a failure. */
export const judged = test.skipIf(!installed && !process.env.CI);

if (!installed)
  console.warn('admesh is not installed: the outside judge of STL files is left out (Debian: apt-get install admesh)');

export const NOTHING_TO_MEND = [
  'Degenerate facets',
  'Edges fixed',
  'Facets removed',
  'Facets added',
  'Facets reversed',
  'Backwards edges',
  'Normals fixed',
];

/** Its report on a file of these bytes. */
export function judge(bytes: Uint8Array): string {
  const folder = mkdtempSync(join(tmpdir(), 'evenrun-stl-'));
  try {
    const file = join(folder, 'part.stl');
    writeFileSync(file, bytes);
    return spawnSync('admesh', [file], { encoding: 'utf8' }).stdout;
  } finally {
    rmSync(folder, { recursive: true });
  }
}

/** The number that follows `label :` first in what it prints. */
export function reading(report: string, label: string): number {
  const found = new RegExp(`${label}\\s*:\\s*(-?[\\d.]+)`).exec(report);
  if (!found) throw new Error(`admesh said nothing of "${label}":\n${report}`);
  return Number(found[1]);
}
