/** Every sheet as a draughtsman would look at it first: no words over words, nothing off the page, nothing lost at a joint. */
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { headerCuts, resolveHeader, roomReport } from '../../../geometry';
import { parseDesign } from '../../../shared/design/parse';
import { placedTexts } from '../../../src/formats/drawing/textCorners';
import { fittingSheets } from '../../../src/shop/fitting/fittingSheets';
import { flangeSheets } from '../../../src/shop/flangeSheet';
import { flangeSheetPlans } from '../../../src/shop/flangeSheetPlans';
import { coverSheets } from '../../../src/shop/packet/cover';
import { fittingGroup, flangeGroup, guideGroup, templateGroup } from '../../../src/shop/packet/groups';
import { partsOf } from '../../../src/shop/part';
import { PAPER_NAMES } from '../../../src/shop/sheet/paper';
import { framed, type Sheet } from '../../../src/shop/sheet/sheet';
import { bendGuide } from '../../../src/shop/templates/bendGuide';
import { templateStrip } from '../../../src/shop/templates/strip';
import { templateFile, templateSheets } from '../../../src/shop/templates/templateSheets';
import { wishedTemplate } from '../../../src/shop/templates/wishes';
import { FITTING } from '../fitting/made';
import { CUTS, MM, STAMP } from './cuts';
import { PLAN } from './flangePlan';
import { clashesOn, lostOn, textsOf } from './looked';

const BENDS = [
  [25, 30],
  [42.4, 63.6],
  [63.5, 95.25],
  [63.5, 152.4],
  [76.2, 228.6],
  [76.2, 381],
].map(([outsideDiameter, radius]) => ({ outsideDiameter: outsideDiameter!, radius: radius! }));

/** Segmented bends as they are asked for: the square line midway between joints, many notes. */
const ASKED = [
  [50.8, 76.2, 90, 4],
  [42.4, 63.6, 90, 2],
  [101.6, 152.4, 45, 1],
  [63.5, 63.5, 180, 8],
].map(
  ([outsideDiameter, radius, angle, joints]) =>
    wishedTemplate(
      {
        kind: 'mitre',
        measuredOn: 'outside',
        wall: 1.5,
        outsideDiameter: outsideDiameter!,
        radius: radius!,
        angle: angle!,
        joints: joints!,
      },
      'mm',
    ).cut,
);

/** A long title, long problems, many groups: the fullest first page there is. */
const COVER = {
  design: 'A header with a title that goes on and on, for a car that has been in the family for ever',
  contents: Array.from({ length: 6 }, (_, i) => ({
    name: 'Wrap-around templates',
    use: 'for every cut that is not square, on every tube',
    from: 10 * i + 2,
    to: 10 * i + 11,
  })),
  problems: Array.from({ length: 9 }, () => `runners/r1: ${'it is too close to the steering shaft, '.repeat(4)}`),
  fitting: Array.from(
    { length: 12 },
    (_, i) => `left ${i} is reached before wrapping only: the tube beside it is in the way of every socket by 15.0 mm`,
  ),
};

/** Every page of every example's packet. */
const EXAMPLES = new URL('../../../public/examples/', import.meta.url);
const ofExamples = readdirSync(EXAMPLES)
  .filter((name) => name.endsWith('.evenrun.json'))
  .flatMap((name) => {
    const header = resolveHeader(parseDesign(readFileSync(new URL(name, EXAMPLES), 'utf8')));
    const options = { paper: 'a4', paperThickness: 0.1, display: header.design.display ?? 'mm' } as const;
    const groups = [
      templateGroup(headerCuts(header), options),
      guideGroup(partsOf(header).parts, options),
      flangeGroup(flangeSheetPlans(header), options),
      fittingGroup({ header, room: roomReport(header, new Map()) }, options),
    ];
    const sheets = groups.flatMap((g) => g.sheets);
    return sheets.map((sheet) => [`${name}: ${sheet.title}`, sheet] as const);
  });

const SHEETS: readonly (readonly [string, Sheet])[] = [
  ...PAPER_NAMES.flatMap((paper) =>
    (['mm', 'in'] as const)
      .flatMap((display) => [
        ...[...CUTS, ...ASKED].flatMap((cut) => templateSheets(cut, { ...MM, display }, paper)),
        ...CUTS.flatMap((cut) => templateSheets(cut, { ...MM, display, stations: 8 }, paper)),
        ...BENDS.map((bend) => bendGuide(bend, paper, display)),
        ...flangeSheets(PLAN, { paper, display }),
        ...fittingSheets(FITTING, paper, display),
        ...coverSheets({ ...COVER, display }, paper),
        ...coverSheets({ ...COVER, fitting: [], display }, paper),
      ])
      .map((sheet) => [`${paper}: ${sheet.title}`, sheet] as const),
  ),
  ...ofExamples,
  ...[...CUTS, ...ASKED].map((cut) => [`file: ${cut.title}`, templateFile(cut, MM)] as const),
];

describe.each(SHEETS)('%s', (_, sheet) => {
  test('no words over words', () => expect(clashesOn(sheet)).toEqual([]));
  test('nothing off the page', () => expect(lostOn(sheet)).toEqual([]));
});

test('the examples have templates, guides and flanges to look at', () => {
  expect(ofExamples.length).toBeGreaterThan(30);
});

test('words at a joint between two sheets are whole on one of them', () => {
  const cut = CUTS.find(({ id }) => id === 'large')!;
  const wanted = templateStrip(cut, MM).items.flatMap((i) => placedTexts(i).map((t) => t.text.text));
  const found = new Set(
    templateSheets(cut, MM, 'a4').flatMap((s) => textsOf(framed(s, STAMP)).map((t) => t.text.text)),
  );
  expect(wanted.filter((w) => w && !found.has(w))).toEqual([]);
});
