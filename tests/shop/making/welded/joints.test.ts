/** Clocking, allowances, the torch and the two tables, on tubes that can be told by hand. */
import { describe, expect, test } from 'vitest';
import type { Design } from '../../../../shared/design/types';
import type { Vec3 } from '../../../../shared/vec3';
import { readCsv } from '../../../../src/formats/csv/readCsv';
import { joints } from '../../../../src/shop/joints';
import { purgeNote } from '../../../../src/shop/making/welded/purge';
import { pieces } from '../../../../src/shop/pieces';
import { seeds } from '../../../geometry/curve/lines';
import { oneRunner } from '../../designs';
import { bend, examples, madeOf, randomWelded } from './designs';

const along = (...points: Vec3[]): Design => oneRunner({ points });
/** Out along +Y, down, then off to +X. */
const STEPPED = along([0, 0, 0], [0, 200, 0], [0, 200, -200], [200, 200, -200]);
const NINETIES = { bends: [bend(90, 60, [150, 150])] };

describe('clocking', () => {
  test('the first scribed line is on the outside: up, where the first bend goes down', () => {
    expect(madeOf(STEPPED, NINETIES).tubes[0]!.start).toEqual({
      turn: expect.closeTo(0, 9),
      around: expect.closeTo(0, 9),
    });
    const up = along([0, 0, 0], [0, 200, 0], [0, 200, 200]);
    expect(madeOf(up, NINETIES).tubes[0]!.start.turn).toBeCloseTo(180, 9);
    expect(madeOf(up, NINETIES).tubes[0]!.start.around).toBeCloseTo((Math.PI * 42.4) / 2, 9);
  });

  // Going down, the line of the first bend faces +Y (outward of a bend from +Y to −Z). The second goes to +X, so its line faces −X.
  // Right-handed about −Z from +Y: +Y → +X → −Y → −X, so −X is three quarters on, or a quarter back.
  test('a turn is clockwise looking along the tube, and the same round the outside in mm', () => {
    const [tube] = madeOf(STEPPED, NINETIES).tubes;
    expect(tube!.joints).toHaveLength(1);
    const [joint] = tube!.joints;
    expect(joint!.turn).toBeCloseTo(-90, 9);
    expect(joint!.around).toBeCloseTo((-Math.PI * 42.4) / 4, 9);
    expect(joint!.total).toBeCloseTo(270, 9);
    expect(joint!.totalAround).toBeCloseTo((Math.PI * 42.4 * 3) / 4, 9);
    expect(joint!.direction).toEqual([0, 0, -1]);
  });

  test('lines run on over straight pieces; the turn is at the last joint before the bend', () => {
    const far = along([0, 0, 0], [0, 200, 0], [0, 200, -600], [200, 200, -600]);
    const [tube] = madeOf(far, NINETIES).tubes;
    expect(tube!.pieces.map(({ kind }) => kind)).toEqual(['bend', 'straight', 'bend']);
    expect(tube!.joints.map(({ turn }) => Math.round(turn))).toEqual([0, -90]);
  });

  test('a straight tube is one piece, and nothing turns', () => {
    const [tube] = madeOf(along([0, 0, 0], [0, 300, 0])).tubes;
    expect(tube).toMatchObject({ start: { turn: 0, around: 0 }, joints: [], remarks: [] });
    expect(tube!.pieces).toEqual([
      { id: 'r1-1', kind: 'straight', in: 300, angle: 0, radius: 0, out: 0, sawnIn: 300, sawnOut: 0, kerfAngle: 0 },
    ]);
  });

  test.each(seeds(30))('stations, totals and straights agree with each other, seed %i', (seed) => {
    const [tube] = madeOf(randomWelded(seed)).tubes;
    let total = tube!.start.turn;
    for (const joint of tube!.joints) {
      total += joint.turn;
      expect(Math.abs(((total - joint.total) / 360) % 1)).toBeCloseTo(0, 9);
      expect(joint.total).toBeGreaterThanOrEqual(0);
      expect(joint.total).toBeLessThan(360);
      expect(joint.turn).toBeGreaterThan(-180);
      expect(joint.turn).toBeLessThanOrEqual(180);
      expect(joint.totalAround / joint.total || (Math.PI * 42.4) / 360).toBeCloseTo((Math.PI * 42.4) / 360, 9);
    }
  });
});

describe('what is sawn', () => {
  const welds = { ...NINETIES, weldGap: 0.5, weldShrinkage: 1.5 };

  test('a joint between straights: half a millimetre longer on either side; arcs take nothing', () => {
    const [tube] = madeOf(STEPPED, welds).tubes;
    expect(tube!.pieces.map((p) => p.sawnIn - p.in)).toEqual([0, 0.5].map((x) => expect.closeTo(x, 9)));
    expect(tube!.pieces.map((p) => p.sawnOut - p.out)).toEqual([0.5, 0].map((x) => expect.closeTo(x, 9)));
    const [from180] = madeOf(STEPPED, { ...welds, bends: [bend(180, 60, [140, 100])] }).tubes;
    const taken = from180!.pieces.reduce((sum, p) => sum + p.sawnIn - p.in + p.sawnOut - p.out, 0);
    expect(taken).toBeCloseTo(from180!.joints.length, 9);
    expect(from180!.remarks).toEqual([]);
  });

  test('a gap wider than the shrinkage saws shorter, never below nothing', () => {
    const [tube] = madeOf(STEPPED, { ...NINETIES, weldGap: 2, weldShrinkage: 0.4 }).tubes;
    expect(tube!.pieces[0]!.sawnOut - tube!.pieces[0]!.out).toBeCloseTo(-0.8, 9);
  });

  test('between two arcs there is nothing to take it: said with the numbers', () => {
    const s = along([0, 0, 0], [0, 160, 0], [0, 160, -120], [100, 160, -120]);
    const said = (workshop: object) => madeOf(s, { ...NINETIES, ...workshop }).tubes[0]!.remarks;
    expect(said({ weldShrinkage: 1.2, weldGap: 0.2 }).map(({ message, stops }) => [message, stops])).toEqual([
      [expect.stringMatching(/^r1: joint 1 stands between two arcs .* 10\.00 mm are wanted/), false],
      [expect.stringMatching(/^r1: at joint 1 .* draws in, 1\.00 mm: the tube comes out 1\.00 mm shorter/), false],
    ]);
    expect(said({ weldGap: 0.2 })[1]!.message).toMatch(/opens, 0\.20 mm: the tube comes out 0\.20 mm longer/);
    expect(said({ weldSetback: 0 })).toEqual([]);
  });

  test('kerf in degrees of the bend', () => {
    const [tube] = madeOf(STEPPED, { ...NINETIES, kerf: (Math.PI / 180) * 60 * 2 }).tubes;
    expect(tube!.pieces.map(({ kerfAngle }) => kerfAngle)).toEqual([2, 2].map((x) => expect.closeTo(x, 9)));
  });
});

describe('a shelf that does not do', () => {
  test('without the radius: what is there, what is asked, what to do; the pieces all the same', () => {
    const [tube] = madeOf(STEPPED, { bends: [bend(180, 75), bend(90, 63.6), bend(45, 63.6)] }).tubes;
    expect(tube!.remarks).toEqual([
      {
        where: 'workshop/bends',
        message:
          'r1: bends 1 and 2 have a radius of 60.00 mm, and the stock bends of 42.40 mm × 1.50 mm stainless-304 have 63.60 mm and 75.00 mm; add a stock bend of radius 60.00 mm, or give the runner a radius that is there.',
        stops: true,
      },
    ]);
    expect(tube!.assumed).toBeUndefined();
    expect(tube!.pieces.length).toBeGreaterThan(1);
  });

  test('with no bend of this tube at all: one is assumed, and said to be', () => {
    for (const bends of [[], [{ ...bend(90), wall: 2 }], [{ ...bend(90), material: 'stainless-316' }]]) {
      const [tube] = madeOf(STEPPED, { bends }).tubes;
      expect([tube!.assumed, tube!.remarks]).toEqual([true, []]);
    }
    const { material: _, ...plain } = bend(90);
    const mild = oneRunner(STEPPED.runners[0]!, { tube: { material: 'mild-steel' } });
    expect(madeOf(mild, { bends: [plain] }).tubes[0]!.assumed).toBeUndefined();
    expect(madeOf(STEPPED, { bends: [plain] }).tubes[0]!.assumed).toBe(true);
  });

  test('sizes within a twentieth of a millimetre are the same', () => {
    const missed = (radius: number) => madeOf(STEPPED, { bends: [bend(90, radius)] }).tubes[0]!.remarks.length;
    expect([60.04, 60.06].map(missed)).toEqual([0, 1]);
  });

  test('a kerf wider than a piece', () => {
    const slight = along([0, 0, 0], [0, 200, 0], [0, 400, 3.5]);
    const said = madeOf(slight, { bends: [bend(180, 60, [0, 0])], kerf: 3 }).tubes[0]!.remarks;
    expect(said).toHaveLength(1);
    expect(said[0]).toMatchObject({ stops: true, where: 'runners/r1' });
    expect(said[0]!.message).toBe(
      "r1-2: the piece is 1.05 mm long and the saw's kerf is 3.00 mm; saw with a thinner blade, or let the bend turn more than 2.86°.",
    );
  });

  test('a tube that ends in an arc has nothing to trim', () => {
    const bare = oneRunner(
      {
        points: [
          [0, 0, 0],
          [0, 60, 0],
          [0, 60, -200],
        ],
      },
      { tooling: { trimStart: 12, trimEnd: 5 } },
    ); // prettier-ignore
    const [out] = madeOf(bare, { bends: [bend(180, 60, [0, 150])] }).tubes;
    expect(out!.remarks[0]!.message).toMatch(/^r1: its start is the end of an arc, .* no leg for 12\.00 mm/);
    expect(out!.pieces[0]!.sawnIn).toBe(0);
    const [whole] = madeOf(bare, { bends: [bend(90, 60, [30, 150])] }).tubes;
    expect([whole!.remarks, whole!.pieces[0]!.sawnIn, whole!.pieces[0]!.sawnOut]).toEqual([
      [],
      12,
      expect.closeTo(145, 9),
    ]);
  });
});

describe('the torch', () => {
  test('has all its room on a tube by itself, and less within a tight U', () => {
    expect(madeOf(STEPPED, NINETIES).tubes[0]!.joints[0]).toMatchObject({ torchFree: 360, inTheWay: [] });
    // Legs 84.8 mm apart, 42.4 mm between their skins: the torch needs 60.
    const u = oneRunner({
      points: [
        [0, 0, 0],
        [0, 300, 0],
        [84.8, 300, 0],
        [84.8, -100, 0],
      ],
      radii: [42.4, 42.4],
    }); // prettier-ignore
    const workshop = { bends: [bend(180, 42.4)] };
    const [tube] = madeOf(u, workshop).tubes;
    const [joint] = tube!.joints;
    expect(tube!.remarks[0]!.message).toMatch(/^r1: at joint 1 a torch has room over 3\d\d° of the round/);
    expect(joint!.inTheWay).toEqual(['this tube']);
    // The torch's round end, 73.2 mm from this leg's axis, comes within 21.2 + 8 mm of the other's: by the law of cosines.
    const seen = (2 * Math.acos((73.2 ** 2 + 84.8 ** 2 - 29.2 ** 2) / (2 * 73.2 * 84.8)) * 180) / Math.PI;
    expect(Math.abs(joint!.torchFree - (360 - seen))).toBeLessThanOrEqual(5);
    expect(madeOf(u, { ...workshop, torchRoom: 40 }).tubes[0]!.joints[0]!.torchFree).toBe(360);
  });

  test('other runners are named, and count only in place', () => {
    const one = STEPPED;
    const beside = {
      ...one.runners[0]!,
      id: 'r2',
      points: [
        [50, 0, 0],
        [50, 400, 0],
      ] as Vec3[],
    }; // prettier-ignore
    const far = {
      ...beside,
      id: 'r3',
      points: [
        [900, 0, 0],
        [900, 400, 0],
      ] as Vec3[],
    }; // prettier-ignore
    const straight = {
      ...one.runners[0]!,
      points: [
        [0, 0, 0],
        [0, 200, 0],
        [0, 200, -200],
      ] as Vec3[],
    }; // prettier-ignore
    const [tube] = madeOf({ ...one, runners: [straight, beside, far] }, { bends: [bend(180, 60, [0, 40])] }).tubes;
    const [joint] = tube!.joints;
    expect(joint).toMatchObject({ torchFree: 360, inTheWay: ['r2'] });
    // As wide as the other and the torch together are seen from this one's axis.
    const seen = (2 * Math.asin(29.2 / 50) * 180) / Math.PI;
    expect(Math.abs(joint!.torchFreeInPlace! - (360 - seen))).toBeLessThanOrEqual(5);
  });

  test('a joint that may slide goes where there is most room', () => {
    const wall = {
      ...STEPPED.runners[0]!,
      id: 'r2',
      points: [
        [-50, 200, -95],
        [-50, 260, -95],
      ] as Vec3[],
    }; // prettier-ignore
    const of = (design: Design, weldSetback = 10) =>
      madeOf(design, { weldSetback, bends: [bend(90, 60, [200, 200])] }).tubes[0]!.joints[0]!;
    expect(of(STEPPED).before).toBeCloseTo(40, 9);
    const beside = { ...STEPPED, runners: [...STEPPED.runners, wall] };
    // A setback of half the straight leaves it no choice.
    const [free, held] = [of(beside), of(beside, 40)];
    expect(held.before).toBeCloseTo(40, 9);
    expect(free.torchFreeInPlace).toBeGreaterThan(held.torchFreeInPlace!);
    expect(Math.min(free.before, free.behind)).toBeGreaterThanOrEqual(10 - 1e-9);
  });
});

describe('tables', () => {
  const tubes = madeOf(examples[0]![1]).tubes;

  test('a row a piece, and a row a joint after each runner’s start', () => {
    const rows = readCsv(pieces(tubes));
    expect(rows.map(({ piece }) => piece)).toEqual(tubes.flatMap((t) => t.pieces.map(({ id }) => id)));
    expect(new Set(rows.map(({ piece }) => piece)).size).toBe(rows.length);
    const table = readCsv(joints(tubes));
    expect(table).toHaveLength(tubes.reduce((sum, t) => sum + t.pieces.length, 0));
    expect(table.filter(({ joint }) => joint === '0').map(({ runner }) => runner)).toEqual(tubes.map((t) => t.runner));
  });

  test('measures have at least five decimals', () => {
    for (const text of [pieces(tubes), joints(tubes)])
      for (const row of readCsv(text))
        for (const [column, cell] of Object.entries(row))
          if (!['runner', 'piece', 'next', 'kind', 'joint', 'in_the_way'].includes(column))
            expect(cell, column).toMatch(/^(-?\d+\.\d{5,})?$/);
  });

  test('a start turned backward has its total forward', () => {
    const [tube] = tubes;
    const back = { ...tube!, start: { turn: -90, around: -33 } };
    expect(readCsv(joints([back]))[0]).toMatchObject({
      turn: '-90.00000000',
      total: '270.00000000',
      total_around: '99.00000000',
    });
  });
});

test('stainless is purged, mild steel is not', () => {
  expect(purgeNote('mild-steel')).toBeNull();
  expect(purgeNote('aluminised-steel')).toBeNull();
  for (const word of ['argon', 'dam both ends', 'vent', 'closed rooms', 'qualified'])
    expect(purgeNote('stainless-321')).toContain(word);
  expect(purgeNote('titanium-2')).toContain('trailing');
});
