/** Numbers typed into a runner's tables: what they ask for, which points are held, radii of a runner's own. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { type BendNumber, bendNumber, setBendNumber } from '../../../geometry';
import { parseDesign } from '../../../shared/design/parse';
import type { Design } from '../../../shared/design/types';
import { heldPoints, withRadii } from '../../../src/app/inspect/shapeEdits';

const design: Design = parseDesign(
  readFileSync(new URL('../../layouts/known/c3-i6-6-2.evenrun.json', import.meta.url), 'utf8'),
);

describe('bend rows', () => {
  const cases: [BendNumber, number][] = [
    [{ what: 'straight', index: 1 }, 4],
    [{ what: 'angle', index: 0 }, 3],
    [{ what: 'rotation', index: 1 }, 5],
    [{ what: 'clocking' }, 4],
  ];
  it.each(cases)('%o changed by %d reads as asked, start and end where they were', (row, by) => {
    let tried = 0;
    for (const { id, points } of design.runners) {
      const now = bendNumber(design, id, row);
      if (!points || now === null) continue;
      const asked = setBendNumber(design, id, row, now + by);
      if (asked === design) continue;
      tried++;
      expect(Math.abs(bendNumber(asked, id, row)! - (now + by))).toBeLessThan(1e-6);
      const after = asked.runners.find((r) => r.id === id)!.points!;
      expect(after[0]).toEqual(points[0]);
      expect(after.at(-1)).toEqual(points.at(-1));
      const held = heldPoints(design.runners.find((r) => r.id === id)!, asked.runners.find((r) => r.id === id)!);
      expect(held.length).toBeGreaterThan(0);
      for (const index of held) expect(index > 0 && index < after.length - 1).toBe(true);
    }
    expect(tried).toBeGreaterThan(0);
  });
});

describe('radii', () => {
  const { id, points } = design.runners.find((r) => r.points && r.points.length > 3)!;
  it('are the tooling’s again once every one is', () => {
    const tube = design.runners.find((r) => r.id === id)!.tube;
    const usual = design.tooling[tube]!.centerlineRadius;
    const plain = withRadii(
      design,
      id,
      points!.slice(1, -1).map((_, i) => i + 1),
      undefined,
    );
    expect(plain.runners.find((r) => r.id === id)).not.toHaveProperty('radii');
    const own = withRadii(plain, id, [1], usual * 2);
    expect(own.runners.find((r) => r.id === id)!.radii).toEqual([usual * 2, ...points!.slice(2, -1).map(() => usual)]);
    expect(withRadii(own, id, [1], undefined).runners.find((r) => r.id === id)).not.toHaveProperty('radii');
  });
});
