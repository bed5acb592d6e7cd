/** Where the tube starts elsewhere than its bend table: the rule that the README gives, held against the tube that is drawn. */
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { resolveHeader, tubeLine } from '../../geometry';
import type { Design, Tooling } from '../../shared/design/types';
import { readCsv } from '../../src/formats/csv/readCsv';
import { bendSchedule } from '../../src/shop/bendSchedule';
import { cutList } from '../../src/shop/cutList';
import { coverSheets } from '../../src/shop/packet/cover';
import { partsOf } from '../../src/shop/part';
import { framed } from '../../src/shop/sheet/sheet';
import { shopFolder } from '../../src/shop/shopFolder';
import { START_RULE, tubeStarts } from '../../src/shop/tubeStart';
import { ONE_BEND, oneRunner } from './designs';

const plain = (tooling: Partial<Tooling> = {}): Design => oneRunner(ONE_BEND, { tooling });
const led = (length: number, tooling?: Partial<Tooling>): Design => {
  const design = plain(tooling);
  return { ...design, ports: [{ ...design.ports[0]!, transition: { length } }] };
};
const stepped: Design = {
  ...plain(),
  flanges: [{ id: 'f1', ports: ['p1'], thickness: 10, seat: 'stepped', stepDepth: 4 }],
};
const partsIn = (design: Design) => partsOf(resolveHeader(design)).parts;

// Its first straight is 840 mm long from the flange's face.
describe.each([
  ['a transition', led(20), 820],
  ['a step', stepped, 844],
  ['neither', plain(), 840],
])('behind %s', (_, design, first) => {
  test("row 1's length plus trim_start is the first straight of the tube that is drawn", () => {
    const parts = partsIn(design);
    const length = Number(readCsv(bendSchedule(parts))[0]!.length);
    const trim = Number(readCsv(cutList(parts).text)[0]!.trim_start);
    const header = resolveHeader(design);
    expect(length + trim).toBeCloseTo(first, 7);
    expect(tubeLine(header, header.runners[0]!)!.straights[0]).toBeCloseTo(first, 7);
  });
});

test('said of each runner where it differs, in the unit of the design', () => {
  expect(tubeStarts(partsIn(plain()))).toEqual([]);
  expect(tubeStarts(partsIn(led(20)))).toEqual([
    "r1: tube starts 20.0 mm after the flange's face (transition): first straight on the tube 820.0 mm",
  ]);
  expect(tubeStarts(partsIn(stepped), 'in')).toEqual([
    "r1: tube starts 0.157 in within the flange's face (its step): first straight on the tube 33.228 in",
  ]);
  expect(tubeStarts(partsIn(led(20, { trimStart: 5 })))[0]).toMatch(/820\.0 mm, 825\.0 mm as sawn$/);
  expect(tubeStarts(partsIn(plain({ trimStart: 5 })))).toEqual([
    'r1: first straight on the tube 840.0 mm, 845.0 mm as sawn',
  ]);
});

test("in the manifest's notes", async () => {
  const starts = tubeStarts(partsIn(led(20)));
  const { files } = await shopFolder(led(20));
  const manifest = JSON.parse(new TextDecoder().decode(files.find(({ name }) => name === 'manifest.json')!.bytes));
  expect(manifest.notes).toEqual(expect.arrayContaining([START_RULE, ...starts]));
});

test("the README's example adds up", () => {
  const readme = readFileSync('README.md', 'utf8');
  const [, section = ''] = readme.split('**Where the tube starts.**');
  const [length, , less, after, , more, within] = section
    .match(/[−\d]+(?:\.\d+)?/g)!
    .slice(2)
    .map((n) => Number(n.replace('−', '-')));
  expect([length! + less!, length! + more!]).toEqual([after, within]);
});

test('the bar of a page says inches too where the design does', () => {
  const [sheet] = coverSheets({ design: 'd', contents: [], problems: [], display: 'in' }, 'a4');
  const bar = (display: 'mm' | 'in' = 'mm') =>
    framed(sheet!, { design: 'd', hash: '0'.repeat(64), display }, { page: 1, of: 1 }).items.flatMap((i) =>
      i.kind === 'text' && i.text.startsWith('This bar') ? [i.text] : [],
    );
  expect(bar('in')).toEqual(['This bar: 100.0 mm, 3.937 in.']);
  expect(bar()).toEqual(['This bar measures 100.0 mm.']);
  expect(sheet!.items.some((i) => i.kind === 'text' && i.text.includes('3.937 in'))).toBe(true);
});

test('all that must be known before the first cut, however much, on as many pages as they take', () => {
  const fitting = Array.from({ length: 80 }, (_, i) => `runner ${i}: here`);
  const sheets = coverSheets({ design: 'd', contents: [], problems: [], fitting, display: 'mm' }, 'letter');
  const said = sheets.flatMap((s) => s.items.flatMap((i) => (i.kind === 'text' ? [i.text] : [])));
  expect(said.filter((words) => words.startsWith('runner '))).toEqual(fitting);
  expect(sheets.length).toBeGreaterThan(2);
});
