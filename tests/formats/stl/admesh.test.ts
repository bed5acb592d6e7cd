/** Our STL files before an outside judge. */
import { expect } from 'vitest';
import { joinMeshes, measureMesh, tubeSolid } from '../../../geometry';
import { writeStl } from '../../../src/formats/stl/write';
import { randomLine } from '../../geometry/solid/lines';
import { random } from '../../random';
import { judge, judged, NOTHING_TO_MEND, reading } from './admesh';

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
