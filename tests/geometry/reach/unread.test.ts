/** A mesh that was not read: what tools reach past it is not taken for measured. */
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { accessReport, resolveHeader } from '../../../geometry';
import { parseDesign } from '../../../shared/design/parse';
import { reachLines } from '../../../src/cli/print/room/reach';

const bank = parseDesign(
  readFileSync(new URL('../../../public/examples/v8-left-bank-4-1.evenrun.json', import.meta.url), 'utf8'),
);

test('is named beside the answer, in kernel and print', () => {
  const report = accessReport(resolveHeader(bank), new Map());
  expect(report.unread).toEqual(['v8-bay.ply']);
  expect(reachLines(report)).toContain('Not measured against v8-bay.ply, which has not been read.');
});

test('and nothing is said where there is none', () => {
  const surroundings = bank.surroundings!.filter(({ shape }) => shape !== 'mesh');
  expect(accessReport(resolveHeader({ ...bank, surroundings })).unread).toBeUndefined();
});
