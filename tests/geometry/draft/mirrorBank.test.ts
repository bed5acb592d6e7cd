/** A bank's mirror image: as long, as true to every rule, bends turned the other way, and itself again when mirrored back. */
import { describe, expect, test } from 'vitest';
import {
  bendTable,
  check,
  draftHeader,
  engineWords,
  mirrorBank,
  type Plane,
  resolveHeader,
  usualOpposite,
} from '../../../geometry';
import { parseDesign } from '../../../shared/design/parse';
import type { Design } from '../../../shared/design/types';
import { writeDesign } from '../../../shared/design/write';
import { newForm } from '../../../shared/engine/formDefaults';
import type { Vec3 } from '../../../shared/vec3';
import { random } from '../../random';
import { oneBank } from './bank';

const PLANE: Plane = { point: [0, -250, 0], normal: [0, 1, 0] };
const near = (a: Vec3, b: Vec3): number => Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);

/** Only the image: the design without the cylinders that it was mirrored from. */
function imageOnly(both: Design, original: Design): Design {
  const gone = (list: keyof Design) => new Set((original[list] as readonly { id: string }[]).map((x) => x.id));
  const without = <T extends { readonly id: string }>(list: readonly T[], ids: ReadonlySet<string>): T[] =>
    list.filter((x) => !ids.has(x.id));
  return {
    ...both,
    ports: without(both.ports, gone('ports')),
    flanges: without(both.flanges!, gone('flanges')),
    merges: without(both.merges, gone('merges')),
    runners: without(both.runners, gone('runners')),
    surroundings: without(both.surroundings!, gone('surroundings')),
  };
}

describe.each([
  ['4-1', oneBank()],
  ['4-2-1, merges with room to move', oneBank('pairs-then-one')],
  ['3-1, an odd ring', oneBank('all-into-one', 3)],
] as const)('%s', (_, design) => {
  const both = mirrorBank(design, { plane: PLANE });
  const half = design.runners.length;

  test('both banks hold every rule at the same lengths', () => {
    const report = check(both);
    expect(report.problems).toEqual([]);
    for (let i = 0; i < half; i++) {
      expect(report.runners[half + i]!.length).toBeCloseTo(report.runners[i]!.length, 6);
      expect(report.runners[half + i]!.angles.map((a) => a.toFixed(6))).toEqual(
        report.runners[i]!.angles.map((a) => a.toFixed(6)),
      );
    }
  });

  test('bends turn the other way', () => {
    const { runners } = resolveHeader(both);
    for (let i = 0; i < half; i++) {
      const [rows, image] = [runners[i]!, runners[half + i]!].map((r) => bendTable(r.centerline!, r.start.up).rows);
      image!.forEach((row, k) => {
        // Half a turn is the same either way.
        const sum = Math.abs(row.rotation + rows![k]!.rotation);
        expect(Math.min(sum, 360 - sum)).toBeLessThan(1e-6);
      });
    }
  });

  test('every inlet lies where its image is', () => {
    const { runners } = resolveHeader(both);
    for (let i = 0; i < half; i++) {
      const [own, image] = [runners[i]!.end!, runners[half + i]!.end!];
      const [x, y, z] = own.position;
      expect(near(image.position, [x, -500 - y, z])).toBeLessThan(1e-9);
      expect(near(image.direction, [own.direction[0], -own.direction[1], own.direction[2]])).toBeLessThan(1e-9);
    }
  });

  test('mirrored back it is what it was', () => {
    const image = imageOnly(both, design);
    const back = mirrorBank(image, { plane: PLANE });
    const again = imageOnly(back, image);
    for (const [i, runner] of design.runners.entries()) {
      const returned = again.runners[i]!;
      expect(returned.to.inlet).toBe(runner.to.inlet);
      runner.points!.forEach((p, k) => {
        expect(near(returned.points![k]!, p)).toBeLessThan(1e-9);
      });
    }
    design.merges.forEach((m, i) => {
      for (const field of ['position', 'axis', 'up'] as const)
        expect(near(again.merges[i]![field], m[field])).toBeLessThan(1e-9);
    });
  });
});

test('in twelve slanting planes (seed 5) everything still holds, where the image is clear of the original', () => {
  const r = random(5);
  const { surroundings: _, ...design } = oneBank();
  for (let k = 0; k < 12; k++) {
    const normal: Vec3 = [r.between(-0.4, 0.4), 1, r.between(-0.4, 0.4)];
    expect(check(mirrorBank(design, { plane: { point: [0, -900, 0], normal } })).problems).toEqual([]);
  }
});

describe('an engine of one bank grows', () => {
  const { design } = draftHeader(newForm({ cylinders: 4, arrangement: 'pairs-then-one' }));
  const onto = (...to: number[]) => new Map(to.map((n, i) => [i + 1, n]));
  const opposite = onto(5, 6, 7, 8);
  const engineOf = (d: Design, cylinders = opposite) => mirrorBank(d, { plane: PLANE, cylinders }).engine;

  test('by the bank opposite; every rule holds, and what is no longer known is left out', () => {
    const both = mirrorBank(design, { plane: PLANE, cylinders: opposite });
    expect(check(both).problems).toEqual([]);
    expect(both.engine).toEqual({
      cylinders: 8,
      banks: [
        [1, 2, 3, 4],
        [5, 6, 7, 8],
      ],
    });
    expect(engineWords(design, both)).toBe(
      'The engine has 8 cylinders now, in two banks; its firing order is left out: type the whole engine’s.',
    );
    expect(parseDesign(writeDesign(both))).toEqual(both);
  });

  test('all else about it stays', () => {
    const engine = { ...design.engine!, bore: 86, stroke: 84, rpm: [2000, 6500] as const };
    const { banks: _, firingOrder: __, cylinders: ___, ...rest } = engine;
    expect(engineOf({ ...design, engine })).toMatchObject(rest);
  });

  test('in the order of the cylinders opposite', () => {
    expect(engineOf(design, onto(8, 7, 6, 5))!.banks![1]).toEqual([8, 7, 6, 5]);
  });

  test('without banks before, they are the ports and those opposite', () => {
    expect(engineOf({ ...design, engine: { cylinders: 4 } })).toEqual({
      cylinders: 8,
      banks: [
        [1, 2, 3, 4],
        [5, 6, 7, 8],
      ],
    });
  });

  test('of two banks mirrored together, to four', () => {
    const banks = [
      [1, 3],
      [2, 4],
    ];
    const both = mirrorBank({ ...design, engine: { cylinders: 4, banks } }, { plane: PLANE, cylinders: opposite });
    expect(both.engine!.banks).toEqual([...banks, [5, 7], [6, 8]]);
    expect(engineWords(design, both)).toContain('in four banks');
  });

  test('without banks where those would not name every cylinder once, which is said', () => {
    const loose = { ...design, engine: { ...design.engine!, banks: [[1, 2]] } };
    const both = mirrorBank(loose, { plane: PLANE, cylinders: opposite });
    expect(both.engine).toEqual({ cylinders: 8 });
    expect(engineWords(loose, both)).toBe(
      'The engine has 8 cylinders now; its banks and firing order are left out: type the whole engine’s.',
    );
  });

  test('not where it has the cylinders, or says no number of them', () => {
    expect(engineOf({ ...design, engine: { cylinders: 8 } })).toEqual({ cylinders: 8 });
    expect(engineOf({ ...design, engine: { bore: 80 } })).toEqual({ bore: 80 });
    expect(engineWords(design, design)).toBeNull();
  });

  test.each([
    ['a number left out', onto(5, 6, 7, 9), /^ports\/p4\/cylinder: found cylinder 9 opposite; allowed: .*from 1 to 8,/],
    ['a number twice', onto(5, 6, 7, 7), /^ports\/p4\/cylinder: found cylinder 7 opposite, as for cylinder 3;/],
    ['half a cylinder', onto(5, 6, 7, 7.5), /^ports\/p4\/cylinder: found cylinder 7.5 opposite; allowed: a whole/],
    ['more than there can be', onto(5, 6, 7, 65), /^ports\/p4\/cylinder: .* allowed: a whole number from 1 to 64/],
  ])('%s is refused with the place', (_, cylinders, message) => {
    expect(() => engineOf(design, cylinders)).toThrow(message);
  });
});

describe('the cylinders opposite, to start from', () => {
  const design = oneBank();
  test('are the other bank’s', () => {
    expect([...usualOpposite(design, [1, 2, 3, 4]).values()]).toEqual([5, 6, 7, 8]);
  });
  test('follow the engine’s where there is no other bank, or it has ports', () => {
    const { banks: _, ...engine } = design.engine!;
    expect([...usualOpposite({ ...design, engine }, [1, 2, 3, 4]).values()]).toEqual([9, 10, 11, 12]);
    const both = mirrorBank(design, { plane: PLANE });
    expect([...usualOpposite(both, [1, 2, 3, 4]).values()]).toEqual([9, 10, 11, 12]);
  });
});

test('a name that is taken gets a number: the same bank mirrored twice', () => {
  const once = mirrorBank(oneBank(), { plane: PLANE });
  const cylinders = new Map([9, 10, 11, 12].map((n, i) => [i + 1, n]));
  const twice = mirrorBank(once, { bank: 1, cylinders, plane: { point: [0, 0, -900], normal: [0, 0, 1] } });
  expect(twice.merges.map((m) => m.id)).toEqual(['collector', 'collector mirrored', 'collector mirrored 2']);
});

describe('refused, with the place', () => {
  const design = oneBank();
  test.each([
    [
      'a plane through the bank',
      { plane: { point: [0, 0, 0], normal: [0, 1, 0] } as Plane },
      /^ports\/p1\/position: .*midway/,
    ],
    [
      'a plane so far away that the image could not be read back',
      { plane: { point: [0, -60_000, 0], normal: [0, 1, 0] } as Plane },
      /^plane: found an image farther out than 100000 mm; allowed: a plane nearer/,
    ],
    ['a bank that is not there', { bank: 3 }, /^engine\/banks: found no bank 3; allowed: one of 1 to 2/],
    ['a bank without ports', { bank: 2 }, /^engine\/banks\/1: found no port/],
    [
      'a cylinder opposite that has a port',
      { cylinders: new Map([[1, 2]]) },
      /^ports\/p1\/cylinder: found cylinder 2 opposite, which has port "p2"/,
    ],
    [
      'a name that is taken',
      { names: new Map([['collector', 'Collector']]) },
      /^merges\/collector: found "Collector" for its mirror image, which is there already; allowed: a new name/,
    ],
    ['a name for nothing', { names: new Map([['m9', 'm10']]) }, /^names: found "m9"; allowed: one of/],
    [
      'a surrounding that is not there',
      { surroundings: ['wall'] },
      /^surroundings: found "wall"; allowed: one of "head"/,
    ],
  ])('%s', (_, options, message) => {
    expect(() => mirrorBank(design, { plane: PLANE, ...options })).toThrow(message);
  });

  test('a cylinder with none opposite', () => {
    const { banks: _, ...engine } = design.engine!;
    expect(() => mirrorBank({ ...design, engine }, { plane: PLANE })).toThrow(/^ports\/p1\/cylinder: found 1, with no/);
  });

  test('a collector that both banks share', () => {
    const { design: shared } = draftHeader(newForm({ cylinders: 4, banks: 2, collectors: [[1, 2, 3, 4]] }));
    const without = {
      ...shared,
      ports: shared.ports.map((p) => ({ ...p, cylinder: p.cylinder > 2 ? p.cylinder + 2 : p.cylinder })),
      engine: {
        banks: [
          [1, 2],
          [3, 4],
          [5, 6],
        ],
      },
    };
    const cylinders = new Map([
      [1, 7],
      [2, 8],
    ]);
    expect(() => mirrorBank(without, { bank: 1, cylinders })).toThrow(/of another bank; allowed/);
  });
});
