/** One call for all that is found about the space: what each part's own function answers, and only what was asked. */
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import {
  accessReport,
  gapReport,
  removalReport,
  resolveHeader,
  roomParts,
  roomReport,
  sensorReport,
} from '../../../geometry';
import { parseDesign } from '../../../shared/design/parse';
import type { Design } from '../../../shared/design/types';

const example = parseDesign(
  readFileSync(new URL('../../../public/examples/v8-left-bank-4-1.evenrun.json', import.meta.url), 'utf8'),
);
const design: Design = {
  ...example,
  sensors: [{ id: 'egt 1', kind: 'temperature', on: { runner: 'r1' }, at: 60, clock: -45 }],
};
const header = resolveHeader(design);
const meshes = new Map();

describe('the report', () => {
  test('is that of each part', () => {
    expect(roomReport(header, meshes)).toEqual({
      gaps: gapReport(header, meshes),
      access: accessReport(header, meshes),
      removal: removalReport(header, meshes),
      sensors: sensorReport(header, meshes),
    });
  });

  test('has what is asked and no more', () => {
    expect(Object.keys(roomReport(header, meshes, ['sensors', 'gaps']))).toEqual(['gaps', 'sensors']);
    expect(roomReport(header, meshes, [])).toEqual({});
  });

  test('of a header that is not laid is there, and empty of what cannot be known', () => {
    const runners = design.runners.map(({ points: _, radii: __, ...r }) => r);
    const { gaps, removal } = roomReport(resolveHeader({ ...design, runners }), meshes);
    expect(gaps!.gaps.filter((g) => g.kind === 'tube-to-tube')).toEqual([]);
    expect(removal!.pieces).toEqual([]);
  });
});

describe('what there is to find', () => {
  const { surroundings: _, flanges: __, sensors: ___, service: ____, wrap: _____, ...bare } = design;
  test.each<[string, Design, string[]]>([
    ['nothing but tubes', bare, ['gaps']],
    ['a flange without fasteners', { ...bare, flanges: [{ ...example.flanges![0]!, fasteners: [] }] }, ['gaps']],
    ['a flange with fasteners', { ...bare, flanges: example.flanges! }, ['gaps', 'access']],
    ['a wrap', { ...bare, wrap: { thickness: 1.6, layers: 2, roll: 20 } }, ['gaps', 'access']],
    ['something around and no flange', { ...bare, surroundings: example.surroundings! }, ['gaps']],
    [
      'something around and a flange',
      { ...bare, surroundings: example.surroundings!, flanges: [{ ...example.flanges![0]!, fasteners: [] }] },
      ['gaps', 'removal'],
    ],
    [
      'two flanges',
      { ...bare, flanges: [example.flanges![0]!, { ...example.flanges![0]!, id: 'other' }] },
      ['gaps', 'access', 'removal'],
    ],
    ['all of it', design, ['gaps', 'access', 'removal', 'sensors']],
  ])('in a design with %s', (_, of, parts) => {
    expect(roomParts(of)).toEqual(parts);
  });
});
