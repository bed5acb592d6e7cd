/** What is found about the space, as `check` prints it: from reports made by hand, line by line. */
import { describe, expect, test } from 'vitest';
import { type RoomReport, resolveHeader, roomParts } from '../../../geometry';
import { printRoom, roomFields } from '../../../src/cli/print/room/room';
import { DESIGN, GAPS, ROOM } from '../../shop/fitting/made';

const header = resolveHeader(DESIGN);
const printed = (room: RoomReport, of = header): string[] => printRoom(of, room).join('\n\n').split('\n');

describe('gaps', () => {
  test('the least come first, with where on the tube and when', () => {
    const lines = printed({ gaps: ROOM.gaps });
    expect(lines[0]).toBe('Least gaps, mm, over the motion; 4 more with --json');
    expect(lines.slice(1, 5).map((line) => line.trim().split(/ {2,}/))).toEqual([
      ['between', 'gap', 'needed', 'to spare', 'on the tube, mm along', 'engine', 'heat'],
      ['r1 and steering shaft', '5.25', '12.00', '-6.75', 'r1 straight 2, 214.300', '3.5°', 'hot'],
      ['r3 and r7', '0.80', '4.00', '-3.20', 'r3 straight 1, 90.000', '0.0°', 'cold'],
      ['left collector and frame rail', '61.70', '0.00', '61.70', '3.5°', 'hot'],
    ]);
    expect(lines).toHaveLength(10);
    expect(lines[5]).toMatch(/-2\.0° +50 %$/);
  });

  test('without motion nothing is said of it, and in inches three decimals are', () => {
    const still = GAPS.map(({ pose: _, ...gap }) => gap);
    const lines = printed({ gaps: { gaps: still, profiles: [] } }, resolveHeader({ ...DESIGN, display: 'in' }));
    expect(lines[0]).toBe('Least gaps, in; 4 more with --json');
    expect(lines[1]).not.toContain('engine');
    expect(lines[2]).toMatch(/^ {2}r1 and steering shaft +0\.207 +0\.472 +-0\.266 +r1 (bend|straight) \d, 8\.4370$/);
  });

  test('nothing around: nothing more than before', () => {
    expect(printRoom(resolveHeader({ ...DESIGN, surroundings: [] }), { gaps: ROOM.gaps })).toEqual([]);
  });
});

describe('reach', () => {
  test('counts, names the others by how they are reached, and gives each a line', () => {
    const lines = printed({ access: { ...ROOM.access, wrap: [] } });
    expect(lines.slice(0, 3)).toEqual([
      'Reach',
      '  5 of 8 fasteners are reachable; 1 with one tool only: left flange stud 5; 1 before wrapping only: left flange stud 3; 1 blocked: left flange stud 8.',
      '  1 of 2 service points are reachable; 1 before wrapping only: starter bolt.',
    ]);
    expect(lines.slice(3).map((line) => line.trim())).toEqual(
      ROOM.access.entries.filter((e) => e.reach !== 'reachable').map((e) => e.message),
    );
  });

  test('all reachable is one line, and one of one reads as such', () => {
    const plain = ROOM.access.entries.filter((e) => e.reach === 'reachable');
    expect(printed({ access: { entries: plain, wrap: [] } })).toEqual([
      'Reach',
      '  All fasteners are reachable.',
      '  The service point is reachable.',
    ]);
    const blocked = ROOM.access.entries.filter((e) => e.reach === 'blocked');
    expect(printed({ access: { entries: blocked, wrap: [] } })[1]).toBe(
      '  0 of 1 fastener is reachable; 1 blocked: left flange stud 8.',
    );
  });

  test('nothing to reach, no wrap: nothing', () => {
    expect(printRoom(header, { access: { entries: [], wrap: [] } })).toEqual([]);
  });
});

test('wrap: where it ends, what is left bare and why, in the order of the tube', () => {
  const lines = printed({ access: { ...ROOM.access, entries: [] } });
  expect(lines[0]).toBe('Wrap, 1.60 mm, 2 layers; mm along the tube');
  expect(lines.slice(2).map((line) => line.trim().split(/ {2,}/))).toEqual([
    ['r1', '0.0', '40.0', 'bare: for egt 1'],
    ['40.0', '180.0', 'wrapped'],
    ['180.0', '260.5', 'bare: for left flange stud 3'],
    ['260.5', '640.0', 'wrapped'],
    ['640.0', '700.0', 'bare: tubes run together: r3'],
    ['r3', '0.0', '100.0', 'bare: as drawn'],
    ['100.0', '460.0', 'wrapped'],
    ['460.0', '500.0', 'bare: too narrow for the roll beside frame rail'],
  ]);
  expect(lines.every((line) => line === line.trimEnd())).toBe(true);
});

test('getting it off: a line a piece, then the joints', () => {
  const [head, piece, joint] = printed({ removal: ROOM.removal });
  expect(head).toBe('Getting it off');
  expect(piece).toMatch(/^ {2}It slides off its studs and leaves the bay/);
  expect(joint).toMatch(/^ {2}Left as a slip joint/);
});

test('sensors: lean, distance, room, spanner; remarks below', () => {
  const lines = printed({ sensors: ROOM.sensors });
  expect(lines.slice(1, 4).map((line) => line.trim().split(/ {2,}/))).toEqual([
    ['sensor', 'on', 'above level', 'collector', 'room', 'beside', 'spanner'],
    ['lambda', 'left collector', '31.3°', '90.00 past its inlets', '18.20', 'frame rail', 'fits'],
    ['egt 1', 'r1', '-8.0°', '640.00 before its outlet', 'nothing near', 'meets r3'],
  ]);
  expect(lines[4]).toMatch(/^ {2}egt 1 {2}egt 1 hangs 8\.0° below level/);
});

test('a program gets the list of gaps, and no field that was not asked for', () => {
  expect(roomFields(ROOM)).toEqual({ ...ROOM, gaps: GAPS });
  expect(roomFields({})).toEqual({});
});

test('what there is to find depends on what the design has', () => {
  expect(roomParts(DESIGN)).toEqual(['gaps', 'access', 'removal', 'sensors']);
  const { surroundings: _, sensors: __, wrap: ___, service: ____, ...bare } = DESIGN;
  expect(roomParts(bare)).toEqual(['gaps', 'access']);
  expect(roomParts({ ...bare, flanges: [] })).toEqual(['gaps']);
  expect(roomParts({ ...bare, flanges: [bare.flanges![0]!, { ...bare.flanges![0]!, id: 'f2' }] })).toContain('removal');
});
