/** Running sheets: nothing lost or drawn twice where a sheet ends, a table's head on each, no heading alone at the foot. */
import { describe, expect, test } from 'vitest';
import type { Item } from '../../../src/formats/drawing/drawing';
import { placedTexts } from '../../../src/formats/drawing/textCorners';
import { type Block, flowSheets } from '../../../src/shop/sheet/flow';
import { freeBox, upright } from '../../../src/shop/sheet/paper';

const textsOn = (items: readonly Item[]) => items.flatMap((i) => placedTexts(i).map((t) => t.text));
const table = (rows: number): Block => ({
  kind: 'table',
  columns: [
    { head: 'number', share: 1, bold: true },
    { head: 'words', share: 3 },
  ],
  rows: Array.from({ length: rows }, (_, i) => [
    `row ${i + 1}`,
    i % 7 === 3 ? 'a cell of so many words '.repeat(12).trim() : 'short',
  ]),
});

describe('a table over several sheets', () => {
  const sheets = flowSheets('Long', [{ kind: 'heading', words: 'Table' }, table(120)], 'a4');

  test('every row once, in order, the head on each sheet, which say which part they are', () => {
    const words = sheets.map((s) => textsOn(s.items).map((t) => t.text));
    const rows = words.flat().filter((w) => w.startsWith('row '));
    expect(rows).toEqual(Array.from({ length: 120 }, (_, i) => `row ${i + 1}`));
    expect(sheets.length).toBeGreaterThan(2);
    for (const on of words) expect(on.filter((w) => w === 'number')).toHaveLength(1);
    expect(sheets.map((s) => s.title)).toEqual(sheets.map((_, i) => `Long, part ${i + 1} of ${sheets.length}`));
  });

  test('all within the free part of the sheet', () => {
    const { top, bottom } = freeBox(upright('a4'));
    for (const { items } of sheets)
      for (const { at } of textsOn(items)) {
        expect(at[1]).toBeGreaterThan(top);
        expect(at[1]).toBeLessThan(bottom);
      }
  });
});

test('a heading stands with what it heads, however far down it comes', () => {
  for (let rows = 20; rows < 60; rows++) {
    const sheets = flowSheets('Two', [table(rows), { kind: 'heading', words: 'Second' }, table(2)], 'letter');
    const on = sheets.findIndex((s) => textsOn(s.items).some((t) => t.text === 'Second'));
    const after = textsOn(sheets[on]!.items).filter((t) => t.text === 'row 1');
    expect(after.length, `${rows} rows`).toBeGreaterThan(on === 0 ? 1 : 0);
  }
});

test('no empty sheet at the end, where a table ends with the sheet', () => {
  for (let rows = 1; rows < 80; rows++)
    for (const { items } of flowSheets('One', [table(rows)], 'a4')) expect(textsOn(items).length).toBeGreaterThan(3);
});

test('no row of a table stands alone, neither at the foot of a sheet nor on the next', () => {
  for (let before = 1; before < 40; before++) {
    const words = Array.from({ length: before }, (): Block => ({ kind: 'words', words: 'A line.' }));
    const sheets = flowSheets('Rows', [...words, { kind: 'heading', words: 'Table' }, table(8)], 'a4');
    for (const { items } of sheets) {
      const rows = textsOn(items).filter(({ text }) => text.startsWith('row ')).length;
      expect(rows, `${before} lines before`).not.toBe(1);
    }
  }
});
