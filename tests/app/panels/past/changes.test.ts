/** What a step changed, in words: told apart by kind, few ones by name and many by number. */
import { describe, expect, it } from 'vitest';
import type { Design } from '../../../../shared/design/types';
import { changesOf } from '../../../../src/app/panels/past/changes';
import { random } from '../../../random';
import { designWith } from '../../designs';
import { randomEdit } from '../../randomEdits';

const one = designWith([
  [0, 0, 0],
  [0, 320, 0],
  [100, 320, -300],
]);
const runners = (count: number): Design => ({
  ...one,
  runners: Array.from({ length: count }, (_, i) => ({ ...one.runners[0]!, id: `r${i + 1}` })),
});
const shifted = (design: Design, moved: (i: number) => boolean): Design => ({
  ...design,
  runners: design.runners.map((r, i) => (moved(i) ? { ...r, points: [...r.points!].reverse() } : r)),
});

describe('what a step changed', () => {
  it('names a few runners and counts many', () => {
    const eight = runners(8);
    expect(
      changesOf(
        eight,
        shifted(eight, (i) => i === 0 || i === 2),
      ),
    ).toEqual(['r1, r3 moved']);
    expect(
      changesOf(
        eight,
        shifted(eight, (i) => i < 5),
      ),
    ).toEqual(['5 runners moved']);
    expect(
      changesOf(
        eight,
        shifted(eight, () => true),
      ),
    ).toEqual(['all 8 runners moved']);
  });

  it('tells a lock, another tube, a coming and a going apart', () => {
    const change = (fields: object): Design => ({ ...one, runners: [{ ...one.runners[0]!, ...fields }] });
    expect(changesOf(one, change({ locked: true }))).toEqual(['r1 locked']);
    expect(changesOf(change({ locked: true }), change({ locked: false }))).toEqual(['r1 unlocked']);
    expect(changesOf(one, change({ tube: 'secondary' }))).toEqual(['r1 changed']);
    expect(changesOf(runners(1), runners(2))).toEqual(['r2 added']);
    expect(changesOf(runners(2), runners(1))).toEqual(['r2 removed']);
  });

  it('names what it must fit into: motion, wrap, tools, service points, sensors', () => {
    const wrapped: Design = { ...one, runners: [{ ...one.runners[0]!, wrapped: [[40, 180]] }] };
    expect(changesOf(one, wrapped)).toEqual(['r1 wrapped otherwise']);
    const plug = { id: 'plug 1', kind: 'spark-plug', position: [0, 0, 90], direction: [0, 0, 1] } as const;
    const probe = { id: 'egt 1', kind: 'temperature', on: { runner: 'r1' }, at: 60, clock: 0 } as const;
    const fitted: Design = {
      ...one,
      motion: { heat: { temperature: 600 } },
      wrap: { thickness: 1.6, layers: 2, roll: 20 },
      access: { required: true },
      service: [plug],
      sensors: [probe],
    };
    expect(changesOf(one, fitted)).toEqual([
      'service point plug 1 added',
      'sensor egt 1 added',
      'motion changed',
      'wrap changed',
      'tools changed',
    ]);
    const turned: Design = { ...fitted, sensors: [{ ...probe, clock: 20 }], service: [{ ...plug, length: 120 }] };
    expect(changesOf(fitted, turned)).toEqual(['service point plug 1 changed', 'sensor egt 1 changed']);
    expect(changesOf(fitted, one).slice(0, 2)).toEqual(['service point plug 1 removed', 'sensor egt 1 removed']);
  });

  it('names what else a design has', () => {
    expect(changesOf(one, { ...one, title: 'b', display: 'in' })).toEqual(['title changed', 'unit shown changed']);
    const [port] = one.ports;
    expect(changesOf(one, { ...one, ports: [{ ...port!, lengthInHead: 90 }] })).toEqual(['port p1 changed']);
    expect(changesOf(one, { ...one, groups: { primaries: { length: 700, tolerance: 1 } } })).toEqual([
      'group primaries changed',
    ]);
    const shaft = { id: 'steering shaft', shape: 'capsule', a: [0, 0, 0], b: [1, 0, 0], radius: 9 } as const;
    expect(changesOf(one, { ...one, surroundings: [shaft] })).toEqual(['steering shaft added']);
  });

  it('says something about every edit that changes the bytes, and nothing about others (seed 21)', () => {
    const r = random(21);
    const box = (id: string) => ({ id, shape: 'box', min: [0, 0, 0], max: [1, 1, 1] }) as const;
    const start: Design = { ...one, display: 'mm', clearance: { tubeToTube: 4 }, surroundings: [box('a'), box('b')] };
    for (let i = 0; i < 300; i++) {
      const next = randomEdit(start, r);
      // The order of keys is bytes too, but nothing that a reader would call a change.
      const changed = JSON.stringify(sorted(start)) !== JSON.stringify(sorted(next));
      expect(changesOf(start, next).length > 0, JSON.stringify(next)).toBe(changed);
    }
  });
});

function sorted(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(sorted);
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(
    Object.entries(value)
      .sort(([a], [b]) => (a < b ? -1 : 1))
      .map(([key, of]) => [key, sorted(of)]),
  );
}
