import { describe, expect, test } from 'vitest';
import { resolveHeader, tubeLine } from '../../geometry';
import type { Design } from '../../shared/design/types';
import { readCsv } from '../../src/formats/csv/readCsv';
import { turnCell } from '../../src/shop/angles';
import { bendSchedule } from '../../src/shop/bendSchedule';
import { cutList } from '../../src/shop/cutList';
import { intersectionPoints } from '../../src/shop/intersectionPoints';
import { partsOf } from '../../src/shop/part';
import { rebuildFromTables } from '../../src/shop/rebuild';
import { startClocking } from '../../src/shop/startClocking';
import { layoutNames, loadLayout } from '../layouts/load';
import { ONE_BEND, oneRunner } from './designs';

const partsIn = (design: Design) => partsOf(resolveHeader(design)).parts;
const schedule = (design: Design) => bendSchedule(partsIn(design));
const clocking = (design: Design) => startClocking(partsIn(design));

describe.each(layoutNames('known'))('%s', (name) => {
  const design = loadLayout('known', name).design;
  const cuts = readCsv(cutList(partsIn(design)).text);

  test('its tables give every centerline back', () => {
    const rebuilt = rebuildFromTables(design, schedule(design), clocking(design));
    expect(rebuilt.map((r) => r.id)).toEqual(design.runners.map((r) => r.id));
    for (const { id, deviation } of rebuilt) expect(deviation, id).toBeLessThan(1e-6);
  });

  test('straights and arcs of the schedule add up to the cut list', () => {
    const rows = readCsv(schedule(design));
    for (const { runner, centerline, cut_length, trim_start, trim_end } of cuts) {
      const of = rows.filter((r) => r.runner === runner);
      const total = of.reduce(
        (sum, r) => sum + Number(r.length) + (Number(r.radius) * Number(r.angle) * Math.PI) / 180,
        0,
      );
      expect(total).toBeCloseTo(Number(centerline), 6);
      expect(Number(cut_length)).toBeCloseTo(Number(centerline) + Number(trim_start) + Number(trim_end), 7);
      expect(of.map((r) => r.row)).toEqual(of.map((_, i) => String(i + 1)));
      const last = of.at(-1)!;
      expect([last.rotation, last.angle, last.radius].map(Number)).toEqual([0, 0, 0]);
      expect(Number(of[0]!.rotation)).toBe(0);
    }
  });

  test('every measure has at least five decimals, a point and no exponent', () => {
    for (const text of [
      schedule(design),
      clocking(design),
      intersectionPoints(partsIn(design)),
      cutList(partsIn(design)).text,
    ])
      for (const line of text.trimEnd().split('\r\n').slice(1))
        for (const cell of line.split(',').slice(1)) expect(cell).toMatch(/^(\d+|-?\d+\.\d{5,})$/);
  });
});

describe('the proof can fail', () => {
  test('a rotation off by a hundredth of a degree, and a clocking, show', () => {
    const design = loadLayout('known', 'c2-i4-4-2-1').design;
    const rows = schedule(design).split('\r\n');
    const at = rows.findIndex((row) => row.startsWith('r2,2,'));
    const cells = rows[at]!.split(',');
    rows[at] = cells.with(3, String(Number(cells[3]) + 0.01)).join(',');
    const [, r2] = rebuildFromTables(design, rows.join('\r\n'), clocking(design));
    expect(r2!.deviation).toBeGreaterThan(0.005);
    const turned = clocking(design).replace(/^r1,.*/m, 'r1,12.00000000');
    expect(rebuildFromTables(design, schedule(design), turned)[0]!.deviation).toBeGreaterThan(1);
  });
});

describe('the rows', () => {
  // Right-handed about +Y from +Z toward +X: down is half a turn.
  test('one bend down from a port that is up', () => {
    const design = oneRunner(ONE_BEND);
    expect(readCsv(schedule(design))).toEqual([
      {
        runner: 'r1',
        row: '1',
        length: '840.00000000',
        rotation: '0.00000000',
        angle: '90.00000000',
        radius: '60.00000000',
      },
      {
        runner: 'r1',
        row: '2',
        length: '240.00000000',
        rotation: '0.00000000',
        angle: '0.00000000',
        radius: '0.00000000',
      },
    ]);
    expect(clocking(design)).toBe('runner,clocking\r\nr1,180.00000000\r\n');
  });

  test('a bend toward +X from up +Z about travel +Y is a quarter turn, positive', () => {
    const design = oneRunner({
      points: [
        [0, 0, 0],
        [0, 200, 0],
        [200, 200, 0],
      ],
    });
    expect(clocking(design)).toContain('r1,90.00000000');
  });

  test('half a turn is 180 in a table, never −180, however it rounds', () => {
    expect(turnCell(-180 + 1e-10)).toEqual({ text: '180.00000000' });
    expect(turnCell(-180 + 1e-7)).toEqual({ text: '-179.99999990' });
    const offset = oneRunner({
      points: [
        [0, 0, 0],
        [0, 200, 0],
        [100, 300, 0],
        [100, 500, 0],
      ],
    });
    expect(readCsv(schedule(offset))[1]!.rotation).toBe('180.00000000');
  });

  test('a U-bend stored as two points is one row', () => {
    const design = oneRunner({
      points: [
        [0, 0, 0],
        [0, 160, 0],
        [120, 160, 0],
        [120, -40, 0],
      ],
    });
    const rows = readCsv(schedule(design));
    expect(rows.map((r) => [r.length, r.angle].map(Number))).toEqual([
      [100, 180],
      [140, 0],
    ]);
    expect(rebuildFromTables(design, schedule(design), clocking(design))[0]!.deviation).toBeLessThan(1e-6);
  });

  test('a straight tube is one row', () => {
    const design = oneRunner({
      points: [
        [0, 0, 0],
        [0, 300, 0],
      ],
    });
    expect(readCsv(schedule(design)).map((r) => r.length)).toEqual(['300.00000000']);
    expect(clocking(design)).toContain('r1,0.00000000');
  });

  test('ids with spaces stay whole', () => {
    const design = oneRunner({ ...ONE_BEND, id: ' left 1' });
    expect(schedule(design)).toContain('\r\n" left 1",1,840');
    expect(readCsv(schedule(design))[0]!.runner).toBe(' left 1');
  });

  test('points: ends without a radius, each bend with its own', () => {
    const rows = readCsv(intersectionPoints(partsIn(oneRunner({ ...ONE_BEND, radii: [75] }))));
    expect(rows.map((r) => [r.point, Number(r.y), Number(r.radius)])).toEqual([
      ['1', 0, 0],
      ['2', 900, 75],
      ['3', 900, 0],
    ]);
  });
});

describe('the cut list', () => {
  test('adds the trims that the tooling asks for', () => {
    const [row] = readCsv(cutList(partsIn(oneRunner(ONE_BEND, { tooling: { trimStart: 40, trimEnd: 12.5 } }))).text);
    const centerline = 840 + 240 + 30 * Math.PI;
    expect(Number(row!.centerline)).toBeCloseTo(centerline, 7);
    expect(Number(row!.cut_length)).toBeCloseTo(centerline + 52.5, 7);
    expect([row!.trim_start, row!.trim_end].map(Number)).toEqual([40, 12.5]);
  });

  test('a transition takes the place of the beginning, a stepped flange asks for more; the schedule stays nominal', () => {
    const plain = oneRunner(ONE_BEND, { tooling: { trimStart: 5 } });
    const [port] = plain.ports;
    const led: Design = { ...plain, ports: [{ ...port!, transition: { length: 20 } }] };
    const stepped: Design = {
      ...plain,
      flanges: [{ id: 'f1', ports: ['p1'], thickness: 10, seat: 'stepped', stepDepth: 4 }],
    };
    const centerline = 840 + 240 + 30 * Math.PI;
    const [before, less, more] = [plain, led, stepped].map((design) => readCsv(cutList(partsIn(design)).text)[0]!);
    expect([less!, more!].map(({ trim_start }) => Number(trim_start))).toEqual([-15, 9]);
    expect(Number(less!.cut_length)).toBeCloseTo(centerline - 15, 7);
    expect(Number(less!.centerline)).toBeCloseTo(centerline, 7);
    expect(Number(less!.mass_kg) / Number(before!.mass_kg)).toBeCloseTo((centerline - 20) / centerline, 6);
    expect(Number(more!.mass_kg) / Number(before!.mass_kg)).toBeCloseTo((centerline + 4) / centerline, 6);
    expect(schedule(led)).toBe(schedule(plain));
    // What is drawn is as long as what is cut, less what the tooling trims off.
    const header = resolveHeader(led);
    expect(tubeLine(header, header.runners[0]!)!.length).toBeCloseTo(Number(less!.cut_length) - 5, 7);
  });

  test('a tube whose transition takes more than its first straight is in no table', () => {
    const design = oneRunner(ONE_BEND);
    const led = (length: number): Design => ({ ...design, ports: [{ ...design.ports[0]!, transition: { length } }] });
    expect(partsIn(led(840))).toHaveLength(1);
    const { parts, leftOut } = partsOf(resolveHeader(led(841)));
    expect(parts).toEqual([]);
    expect(leftOut[0]!.why).toMatch(/takes 841 mm and its first straight is 840 mm long; make the transition shorter/);
  });

  // Stockists' kg per metre, carbon and stainless (key mass.tab, recomputed with factor 0.02491 for stainless).
  test.each([
    ['mild-steel', 42.4, 1.5, 1.513],
    ['stainless-304', 42.4, 1.5, 1.5284],
    ['stainless-304', 50.8, 1.65, 2.0204],
  ])('weighs %s %d × %d as the stockists do', (material, outsideDiameter, wall, perMetre) => {
    const design = oneRunner(
      {
        points: [
          [0, 0, 0],
          [0, 1000, 0],
        ],
      },
      { tube: { material, outsideDiameter, wall } },
    );
    expect(Number(readCsv(cutList(partsIn(design)).text)[0]!.mass_kg)).toBeCloseTo(perMetre, 4);
  });

  test('leaves the mass of an unknown material empty and says so', () => {
    const { text, notMade } = cutList(partsIn(oneRunner(ONE_BEND, { tube: { material: 'unobtainium' } })));
    expect(readCsv(text)[0]!.mass_kg).toBe('');
    expect(notMade[0]!.why).toMatch(/"unobtainium" is not known.*mild-steel/);
  });
});
