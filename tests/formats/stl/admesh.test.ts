/** An outside judge of our STL: admesh always exits 0, so what it says is read. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { joinMeshes, measureMesh, tubeSolid } from '../../../geometry';
import { writeStl } from '../../../src/formats/stl/write';
import { randomLine } from '../../geometry/solid/lines';
import { random } from '../../random';

const installed = spawnSync('admesh', ['--version']).status === 0;
const folder = mkdtempSync(join(tmpdir(), 'evenrun-stl-'));
afterAll(() => rmSync(folder, { recursive: true }));

/** The number that follows `label :` first in what admesh prints. */
function reading(report: string, label: string): number {
  const found = new RegExp(`${label}\\s*:\\s*(-?[\\d.]+)`).exec(report);
  if (!found) throw new Error(`admesh said nothing of "${label}":\n${report}`);
  return Number(found[1]);
}

function judge(bytes: Uint8Array): string {
  const file = join(folder, 'part.stl');
  writeFileSync(file, bytes);
  return spawnSync('admesh', [file], { encoding: 'utf8' }).stdout;
}

const NOTHING_TO_MEND = [
  'Degenerate facets',
  'Edges fixed',
  'Facets removed',
  'Facets added',
  'Facets reversed',
  'Backwards edges',
  'Normals fixed',
];

/** Skipped with a word where the judge is missing, but never in CI, where a missing reference is a failure. */
const judged = test.skipIf(!installed && !process.env.CI);
if (!installed)
  console.warn('admesh is not installed: the outside judge of STL files is left out (Debian: apt-get install admesh)');

judged.each([1, 2, 3])('a tube needs no mending, and its volume is ours, seed %i', (seed) => {
  const { line, shape } = randomLine(random(seed));
  const mesh = tubeSolid(line, shape);
  const report = judge(writeStl(mesh, 'tube'));
  for (const label of NOTHING_TO_MEND) expect(reading(report, label), label).toBe(0);
  expect(reading(report, 'Number of parts')).toBe(1);
  // admesh sums in single precision.
  expect(Math.abs(reading(report, 'Volume') / measureMesh(mesh).volume - 1)).toBeLessThan(1e-3);
});

judged('several shells stay several', () => {
  const tubes = [11, 12, 13].map((seed) => {
    const { line, shape } = randomLine(random(seed));
    return tubeSolid(line, shape);
  });
  const report = judge(writeStl(joinMeshes(tubes), 'header'));
  for (const label of NOTHING_TO_MEND) expect(reading(report, label), label).toBe(0);
  expect(reading(report, 'Number of parts')).toBe(3);
});

judged('and the judge bites: a tube with a triangle missing is mended', () => {
  const { line, shape } = randomLine(random(1));
  const { positions, triangles } = tubeSolid(line, shape);
  const report = judge(writeStl({ positions, triangles: triangles.slice(3) }, 'holed'));
  expect(reading(report, 'Facets added')).toBeGreaterThan(0);
});
