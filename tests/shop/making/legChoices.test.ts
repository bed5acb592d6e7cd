/** Shorter legs: more pieces of less, each choice one that can be cut. On an example whose shelf has three kinds of bends. */
import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, test } from 'vitest';
import { resolveHeader } from '../../../geometry';
import { parseDesign } from '../../../shared/design/parse';
import { makingOf } from '../../../src/shop/making/making';
import type { LegChoice } from '../../../src/shop/making/report';
import { weldedTube } from '../../../src/shop/making/welded/weldedTube';
import { partsOf } from '../../../src/shop/part';

const design = parseDesign(
  readFileSync(new URL('../../../public/examples/four-4-1.evenrun.json', import.meta.url), 'utf8'),
);
const header = resolveHeader(design);
const { parts } = partsOf(header);

describe('legs laid side by side', () => {
  let choices: LegChoice[];
  beforeAll(async () => {
    choices = [...(await makingOf(header)).groups[0]!.legs];
  });

  test('all that stock has, then each shorter leg of the shelf, and what a weld keeps off a bend', () => {
    expect(choices.map(({ longestLeg }) => longestLeg)).toEqual([null, 80, 60, 10]);
  });

  test('each can be cut, and pieces only grow in number', () => {
    for (const [i, { totals }] of choices.entries()) {
      expect(totals.remarks.filter(({ stops }) => stops)).toEqual([]);
      if (i > 0) expect(totals.pieces).toBeGreaterThanOrEqual(choices[i - 1]!.totals.pieces);
      expect(totals.welds).toBe(totals.pieces - parts.length);
    }
  });
});

test.each([120, 80, 60, 25, 10, 0])('no piece keeps more than %d mm, nor a leg of nothing', (longestLeg) => {
  const limited = resolveHeader({ ...design, workshop: { ...design.workshop, longestLeg } });
  for (const part of parts)
    for (const piece of weldedTube(limited, part).pieces) {
      if (piece.kind !== 'bend') continue;
      for (const leg of [piece.in, piece.out]) {
        expect(leg).toBeLessThanOrEqual(longestLeg + 1e-9);
        expect(leg === 0 || leg > 1e-6).toBe(true);
      }
    }
});
