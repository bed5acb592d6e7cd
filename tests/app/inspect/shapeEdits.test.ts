/** Numbers typed into a runner's tables: what they ask for, which points are held, radii of a runner's own. */
import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, it } from 'vitest';
import { type BendNumber, bendNumber, check, pathOf, setBendNumber } from '../../../geometry';
import { parseDesign } from '../../../shared/design/parse';
import type { Design } from '../../../shared/design/types';
import { documents } from '../../../src/app/document';
import { loadInPlace } from '../../../src/app/hand/link';
import { heldPoints, setCoordinate, setRow, withRadii } from '../../../src/app/inspect/shapeEdits';
import { useNotice } from '../../../src/app/notices';

// There are no workers here: the solver answers at once, once it is there.
beforeAll(loadInPlace);

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

describe('typed into the table', () => {
  const open = (name: string): Design =>
    parseDesign(readFileSync(new URL(`../../../public/examples/${name}.evenrun.json`, import.meta.url), 'utf8'));
  it('reads what was typed, or as near as can be with the reason said; the lengths are held either way', async () => {
    const example = open('four-4-1');
    const read = { exact: 0, nearer: 0, refused: 0 };
    for (const { id } of example.runners) {
      for (let index = 0; index < pathOf(example, id).bends.length; index++) {
        for (const what of ['angle', 'straight'] as const) {
          documents.open(example, 'example.evenrun.json');
          useNotice.setState({ notice: null });
          const number = { what, index } as const;
          const by = what === 'angle' ? -1.5 : 2;
          const value = bendNumber(example, id, number)! + by;
          expect(setRow(id, number, value, 'Typed')).toBeNull();
          await Promise.resolve();
          const { settled, gesture } = documents.store.getState();
          expect(gesture).toBeNull();
          const off = Math.abs(bendNumber(settled!, id, number)! - value);
          const why = useNotice.getState().notice;
          if (off < 0.005) read.exact++;
          else {
            expect(why?.lines[0]).toMatch(/\.$/);
            if (settled === example) read.refused++;
            else read.nearer++;
          }
          expect(off).toBeLessThanOrEqual(Math.abs(by) + 1e-9);
          expect(check(settled!).problems).toEqual([]);
        }
      }
    }
    // Of 26 numbers, those beside the only free bend of a runner of three cannot all be had with the length held.
    expect(read.exact).toBeGreaterThanOrEqual(18);
    expect(read.exact + read.nearer + read.refused).toBe(26);
  });

  it('says what has to be done first where a runner is locked', () => {
    const example = open('four-4-1');
    const locked = { ...example, runners: example.runners.map((r) => ({ ...r, locked: true })) };
    documents.open(locked, 'example.evenrun.json');
    expect(setRow('r1', { what: 'angle', index: 1 }, 20, 'Typed')).toBe('r1 is locked: unlock it first.');
    expect(documents.store.getState().settled).toBe(locked);
  });

  it('puts a point where it is typed', async () => {
    const example = open('four-4-1');
    documents.open(example, 'example.evenrun.json');
    const from = example.runners[0]!.points![2]!;
    expect(setCoordinate('r1', 2, 2, from[2] + 3, 'Typed')).toBeNull();
    await Promise.resolve();
    expect(documents.store.getState().settled!.runners[0]!.points![2]![2]).toBeCloseTo(from[2] + 3, 2);
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
