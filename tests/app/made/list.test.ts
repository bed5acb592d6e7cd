/** Parts as a list: volume × density from the stock table, what is not known said and not guessed, names without stutter. */
import { describe, expect, it } from 'vitest';
import { partsNamed } from '../../../geometry';
import { massOfParts, ownerGroups, partMass } from '../../../src/app/made/list';
import type { ShownPart } from '../../../src/app/made/shape';
import { ownerTitle, partName, remarkWords } from '../../../src/app/made/words';

const part = (name: string, id: string, material: string | undefined, volume: number): ShownPart => ({
  id: `collector ${id} ${name}`,
  kind: 'stub',
  name,
  of: { kind: 'merge', id },
  pose: { position: [0, 0, 0], direction: [0, 0, 1], up: [0, 1, 0] },
  volume,
  material,
  print: '',
  shape: {} as never,
});

describe('masses', () => {
  it('are volume times density: a litre of stainless 304 weighs 7.93 kg, of mild steel, the default, 7.85', () => {
    expect(partMass(part('a', 'm', 'stainless-304', 1e6))).toBeCloseTo(7.93, 9);
    expect(partMass(part('a', 'm', undefined, 1e6))).toBeCloseTo(7.85, 9);
  });

  it('are unknown for a material that no table knows, and a sum says for how many', () => {
    const parts = [part('a', 'm', 'stainless-304', 1e6), part('b', 'm', 'unheard-of', 1e6)];
    expect(partMass(parts[1]!)).toBeNull();
    const { mass, unknown } = massOfParts(parts);
    expect(mass).toBeCloseTo(7.93, 9);
    expect(unknown).toBe(1);
  });
});

it('are gathered by owner, in the order in which they come', () => {
  const parts = [part('a', 'm', undefined, 1), part('b', 'n', undefined, 1), part('c', 'm', undefined, 1)];
  expect(ownerGroups(parts).map(({ of, parts: own }) => [of.id, own.map(({ name }) => name)])).toEqual([
    ['m', ['a', 'c']],
    ['n', ['b']],
  ]);
});

it('are named once', () => {
  expect(ownerTitle('Tube', 'r1')).toBe('Tube r1');
  expect(ownerTitle('Collector', 'left collector')).toBe('Left collector');
  expect(ownerTitle('Flange', 'head flange')).toBe('Head flange');
  expect(ownerTitle('Collector', 'collectors')).toBe('Collector collectors');
  expect(partName({ name: 'stub 2', kind: 'stub' })).toBe('Stub 2');
  expect(partName({ name: 'plate 2', kind: 'flange' })).toBe('Flange 2');
  expect(partName({ name: 'plate', kind: 'plate' })).toBe('Plate');
});

describe('what is said of a part', () => {
  it('names nothing twice', () => {
    const title = (part: string) => remarkWords({ part, message: '' }).title;
    expect(['collector collector', 'collector left collector', 'collector m1', 'runner r1'].map(title)).toEqual([
      'Collector',
      'Left collector',
      'Collector m1',
      'Runner r1',
    ]);
    expect(remarkWords({ part: 'port p1 transition', message: 'Port p1: its wall is thin: mend it.' })).toEqual({
      title: 'Port p1 transition',
      words: 'Its wall is thin: mend it.',
    });
    // Of another port, it stays.
    expect(remarkWords({ part: 'port p11', message: 'Port p1: it is.' }).words).toBe('Port p1: it is.');
  });

  it('a part that is missing for two reasons counts once', () => {
    const remark = (part: string, message: string) => ({ part, where: '', message });
    expect(partsNamed([remark('a', '1'), remark('b', '1'), remark('a', '2')])).toEqual(['a', 'b']);
  });
});
