/**
 * Machine tables, read back from `machine-schedule.csv`, give every tube back from both its ends, by the nominal columns and by the
 * machine's: within 0.01 mm and 0.01°, found to be within a hundred thousandth. Every example, every known layout, seeded tubes.
 */
import { describe, expect, test } from 'vitest';
import {
  angleBetween,
  bendTable,
  type Centerline,
  centerline,
  distance,
  type Pose,
  pointAt,
  trimmedLine,
} from '../../../../geometry';
import type { Design } from '../../../../shared/design/types';
import { settingsOf } from '../../../../shared/stock/workshop';
import { readCsv } from '../../../../src/formats/csv/readCsv';
import { machineSchedule } from '../../../../src/shop/machineSchedule';
import { benderOf } from '../../../../src/shop/making/bent/bender';
import { rebuildRows, rowsFromMachine } from '../../../../src/shop/making/bent/rebuildRows';
import type { BentTube } from '../../../../src/shop/making/report';
import type { Part } from '../../../../src/shop/part';
import { designOf, madeOf, randomDesign, tubesOf, wholeDesigns } from '../designs';

const DEGREES = 180 / Math.PI;

const reversed = (line: Centerline): Centerline => centerline([...line.points].reverse(), [...line.radii].reverse());

/** The farthest that two lines are apart at the same length along them, and by how much their ends' directions differ. */
function apart(a: Centerline, b: Centerline): { place: number; degrees: number } {
  let place = Math.abs(a.length - b.length);
  for (let k = 0; k <= 200; k++) {
    const s = (b.length * k) / 200;
    place = Math.max(place, distance(pointAt(a, s).position, pointAt(b, s).position));
  }
  return { place, degrees: angleBetween(a.directions.at(-1)!, b.directions.at(-1)!) * DEGREES };
}

function readRows(text: string, tube: string, end: string) {
  return readCsv(text)
    .filter((row) => row.tube === tube && row.end === end)
    .map((row) => {
      const of = (name: string): number => Number(row[name]);
      return {
        length: of('length'),
        rotation: of('rotation'),
        angle: of('angle'),
        radius: of('radius'),
        feed: of('feed'),
        turn: of('turn'),
        set: of('set'),
      };
    });
}

/** The four ways to rebuild a whole tube, from what the table's text says. */
function rebuilt(design: Design, part: Part, tube: BentTube, text: string) {
  const { resolved, startTrim } = part;
  const real = trimmedLine(resolved, startTrim)!;
  const back = reversed(real);
  const up = resolved.start.up;
  const bender = benderOf(resolved.tooling, settingsOf(design.workshop));
  const trims = { ahead: tube.trimStart, behind: tube.trimEnd };
  const ends = [
    { name: 'start', line: real, trims, clocking: part.table.clocking },
    {
      name: 'end',
      line: back,
      trims: { ahead: trims.behind, behind: trims.ahead },
      clocking: bendTable(back, up).clocking,
    },
  ];
  return ends.flatMap(({ name, line, trims, clocking }) => {
    const start: Pose = { position: line.points[0]!, direction: line.directions[0]!, up };
    const rows = readRows(text, tube.id, name);
    const of = (made: typeof rows | ReturnType<typeof rowsFromMachine>) => {
      const { points, radii } = rebuildRows(start, clocking, made);
      return apart(centerline(points, radii), line);
    };
    return [
      { name: `from its ${name}, nominal`, ...of(rows) },
      { name: `from its ${name}, machine`, ...of(rowsFromMachine(rows, trims, bender)) },
    ];
  });
}

function holds(design: Design): void {
  const made = madeOf(design);
  expect(made.map(({ part }) => part.id)).toEqual(design.runners.map(({ id }) => id));
  const text = machineSchedule(made.flatMap(({ tubes }) => tubes));
  for (const { part, tubes } of made) {
    expect(tubes).toHaveLength(1);
    for (const { name, place, degrees } of rebuilt(design, part, tubes[0]!, text)) {
      expect(place, `${part.id} ${name}`).toBeLessThan(1e-5);
      expect(degrees, `${part.id} ${name}`).toBeLessThan(1e-6);
    }
  }
}

/** A bender with everything about it that changes machine columns. */
function onAWorkedBender(design: Design): Design {
  const bender = {
    stretch: 3.5,
    testBends: [
      [30, 27.5],
      [90, 86],
      [120, 115.5],
    ] as [number, number][],
  };
  const tooling = Object.fromEntries(
    Object.entries(design.tooling).map(([name, tool]) => [name, { ...tool, trimStart: 41, trimEnd: 23, bender }]),
  );
  return { ...design, tooling, workshop: { rotation: 'left-handed' } };
}

describe.each(wholeDesigns())('$name', ({ design }) => {
  test('as it is', () => holds(design));
  test('with springback, stretch, trims, and rotations counted the other way', () => holds(onAWorkedBender(design)));
});

test('200 tubes drawn from seed 1 on', () => {
  for (let seed = 1; seed <= 200; seed++) {
    const design = randomDesign(seed);
    holds(design);
    holds(onAWorkedBender(design));
  }
});

test('a step in the flange, and a transition, are on the tube: the first straight is the real one', () => {
  const plain = designOf([{ length: 70, rotation: 0, angle: 40, radius: 60 }], 90);
  const first = madeOf(plain)[0]!.tubes[0]!;
  const stepped: Design = {
    ...plain,
    flanges: [{ id: 'f1', ports: ['p1'], thickness: 10, seat: 'stepped', stepDepth: 4 }],
  };
  const led: Design = { ...plain, ports: [{ ...plain.ports[0]!, transition: { length: 20 } }] };
  for (const [design, trim] of [
    [stepped, 4],
    [led, -20],
  ] as const) {
    holds(onAWorkedBender(design));
    const [tube] = tubesOf(design);
    expect(tube!.fromStart[0]!.length).toBeCloseTo(first.fromStart[0]!.length + trim, 9);
    expect(tube!.fromEnd.at(-1)!.length).toBeCloseTo(first.fromStart[0]!.length + trim, 9);
    expect(tube!.cutLength).toBeCloseTo(first.cutLength + trim, 9);
    expect([tube!.from, tube!.to]).toEqual([-trim, first.to]);
  }
});

test('the proof can fail: a set angle off by a hundredth of a degree, a feed by a hundredth of a millimetre', () => {
  const design = onAWorkedBender(randomDesign(3));
  const { part, tubes } = madeOf(design)[0]!;
  const worst = (change: (tube: BentTube) => BentTube): number => {
    const text = machineSchedule([change(tubes[0]!)]);
    return Math.max(...rebuilt(design, part, tubes[0]!, text).map(({ place }) => place));
  };
  const with0 = (more: (row: BentTube['fromStart'][number]) => object) => (tube: BentTube) => ({
    ...tube,
    fromStart: tube.fromStart.map((row, i) => (i === 0 ? { ...row, ...more(row) } : row)),
  });
  expect(worst((tube) => tube)).toBeLessThan(1e-5);
  expect(worst(with0(({ set }) => ({ set: set + 0.01 })))).toBeGreaterThan(0.001);
  expect(worst(with0(({ feed }) => ({ feed: feed + 0.01 })))).toBeGreaterThan(0.009);
});

test('turned round twice it is the same tube, and a mirrored tube has its rotations the other way from both ends', () => {
  for (let seed = 1; seed <= 50; seed++) {
    const design = randomDesign(seed);
    const [runner] = design.runners;
    const mirrored = {
      ...design,
      runners: [{ ...runner!, points: runner!.points!.map(([x, y, z]) => [-x, y, z] as const) }],
    };
    const [[one], [other]] = [design, mirrored].map((d) => madeOf(d)[0]!.tubes) as [[BentTube], [BentTube]];
    for (const end of ['fromStart', 'fromEnd'] as const)
      for (const [i, row] of one[end].entries()) {
        const its = other[end][i]!;
        expect([its.length, its.angle, its.mark]).toEqual(
          [row.length, row.angle, row.mark].map((x) => expect.closeTo(x, 6)),
        );
        const turn = Math.abs(Math.abs(row.rotation) - 180) < 1e-6 ? Math.abs(its.rotation) : -its.rotation;
        expect(turn).toBeCloseTo(row.rotation, 6);
      }
  }
});
