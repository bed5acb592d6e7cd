/** What keeps a flange from being made, and what someone should know: each with its place and its remedy, just past its limit. */
import { describe, expect, test } from 'vitest';
import type { Flange } from '../../../shared/design/types';
import { type Asked, PAIRED, planOf, ROW } from './flanges';

type Case = readonly [what: string, asked: Asked, where: string, says: RegExp];

const drawn = (outline: Flange['outline'] & {}, more: Partial<Flange> = {}): Asked => ({ ports: 1, flange: { outline, ...more } }); // biome-ignore format: one line
const square = (half: number): Flange['outline'] & {} => [[-half, -half, 0], [half, -half, 0], [half, half, 0], [-half, half, 0]]; // biome-ignore format: one line

const refused: readonly Case[] = [
  ['no ports', { flange: { ports: [] } }, 'flanges/f1/ports', /no ports; name/],
  ['a fastener under a tube', { ports: 1, studs: [[-40, 0], [24, 0]], opening: { shape: 'round', diameter: 30 } }, 'flanges/f1/fasteners/1', /lies under the tube of runner r1.*Move it .* mm away/],
  ['a hole in an opening', { ports: 1, studs: [[20, 0]], tubes: false }, 'flanges/f1/fasteners/0', /hole of fastener 1 runs into the opening of port p1.*move them apart/],
  ['holes in each other', { ports: 1, studs: [[0, 40], [3, 40]] }, 'flanges/f1/fasteners/1', /runs into the hole of fastener 1/],
  ['openings in each other', { pitch: 35 }, 'ports/p2/opening', /opening of port p2 runs into the opening of port p1/],
  ['an opening within another', { port: (k) => (k === 1 ? { position: [1, 0, 0], opening: { shape: 'round', diameter: 10 } } : {}), tubes: false }, 'ports/p2/opening', /runs into/],
  ['a step as deep as the plate', { flange: { seat: 'stepped', stepDepth: 10 } }, 'flanges/f1/stepDepth', /nothing would be left.*at most 7 mm deep/],
  ['a step that its opening crosses', { opening: { shape: 'rounded-rectangle', width: 44, height: 30, corner: 5 }, flange: { seat: 'stepped' } }, 'flanges/f1/seat', /does not go round its opening.*transition/],
  ['a step wider than its land', drawn(square(21.3), { seat: 'stepped' }), 'flanges/f1/seat', /wider than its land: it cuts the plate's edge/],
  ['a step in a hole', { ports: 1, studs: [[25.8, 0]], flange: { seat: 'stepped', stepGap: 0.2 } }, 'flanges/f1/seat', /wider than its land: it runs into the hole of fastener 1/],
  ['steps in each other', { pitch: 42.6, flange: { seat: 'stepped' } }, 'flanges/f1/seat', /steps of ports p1 and p2 run into each other/],
  ['a port that leans too far', { port: (k) => (k === 1 ? { direction: [0.5, 1, 0] } : {}) }, 'ports/p2/direction', /leans .*° from the mean.*make its plates separate/],
  ['ports against each other', { port: (k) => (k === 1 ? { direction: [0, -1, 0] } : {}) }, 'flanges/f1/ports', /point against each other.*point one way/],
  ['a port off the face', { port: (k) => (k === 1 ? { position: [90, 3, 0] } : {}) }, 'ports/p2/position', /lies 3 mm off the face.*make its plates separate/],
  ['an outline crossing itself', drawn([[-40, -40, 0], [40, 40, 0], [40, -40, 0], [-40, 40, 0]]), 'flanges/f1/outline', /crosses or touches itself at x 0 mm, y 0 mm.*move the corners/],
  ['an outline of two corners and no bulge', drawn([[-40, 0, 0], [40, 0, 0]]), 'flanges/f1/outline', /two corners encloses no area: give at least three corners, or its edges a bulge/],
  ['a hole far too large, over a tube', { ports: 1, studs: [[45, 0]], fastener: { hole: 80 } }, 'flanges/f1/fasteners/0/hole', /80 mm for M8, reaches under the tube of runner r1, 23\.8 mm from its middle: drill it 9 mm/],
  ['the same with its fastener under the tube', { ports: 1, studs: [[24, 0]], fastener: { hole: 80 } }, 'flanges/f1/fasteners/0', /Move it 39\.32 mm away/],
  ['an outline run clockwise', drawn([...square(40)].reverse()), 'flanges/f1/outline', /runs clockwise: list its corners the other way/],
  ['an outline through an opening', drawn(square(17)), 'ports/p1/opening', /opening of port p1 cuts the plate's edge/],
  ['an outline that leaves a hole out', { ports: 1, studs: [[50, 0]], flange: { outline: square(40) } }, 'flanges/f1/fasteners/0', /hole of fastener 1 cuts the plate's edge/],
]; // biome-ignore format: one line a case

test.each(refused)('not made: %s', (_, asked, where, says) => {
  const { plates, notMade, notes } = planOf(asked);
  expect(plates).toEqual([]);
  expect(notes).toEqual([]);
  expect(notMade.map((r) => r.where)).toContain(where);
  const remark = notMade.find((r) => r.where === where && says.test(r.message));
  expect(remark, notMade.map((r) => r.message).join('\n')).toBeDefined();
  expect(remark!.part).toBe('flange f1');
});

const warned: readonly Case[] = [
  ['thin plate', { flange: { thickness: 7.9 } }, 'flanges/f1/thickness', /7\.9 mm thick.*common practice.*thicker/],
  ['a washer on the weld', { ports: 1, studs: [[31.3, 0]] }, 'flanges/f1/fasteners/0', /its washer lies on the weld.*stands 10\.1 mm.*wants 10\.12 mm.*away/],
  ['a washer on the tube', { ports: 1, studs: [[28, 0]] }, 'flanges/f1/fasteners/0', /its washer lies on the tube of runner r1/],
  ['a hole of no series', { ...PAIRED, fastener: { hole: 9.5 } }, 'flanges/f1/fasteners/0/hole', /no ISO 273 series for M8: fine 8\.4 mm, medium 9 mm, coarse 10 mm/],
  ['a hole smaller than its thread', { ...PAIRED, fastener: { hole: 8 } }, 'flanges/f1/fasteners/0/hole', /M8 does not pass through: drill fine 8\.4 mm.*ISO 273/],
  ['a hole that the washer falls through', { ports: 1, studs: [[50, 0]], fastener: { hole: 16 } }, 'flanges/f1/fasteners/0/hole', /16 mm, and a nut's washer for M8 is 16 mm across: it falls through\. Drill fine 8\.4/],
  ['a fastener far from every port', { studs: [[-82.1, 0]] }, 'flanges/f1/fasteners/0', /^Fastener 1 \(M8\) stands at x 82\.1 mm, y 0 mm .*64\.1 mm from the edge of port p1.*beyond 64 mm, 8 border widths.*common practice.*at least 0\.1 mm nearer/],
  ['a fastener out from the face', { ports: 1, studs: [[-38, 0]], fastener: { position: [-38, 80, 0] } }, 'flanges/f1/fasteners/0', /1 \(M8\) lies 80 mm off the plate's face, out from the head, .*move it 80 mm toward the head/],
  ['a fastener below the face', { ports: 1, studs: [[-38, 0]], fastener: { position: [-38, -1.1, 0] } }, 'flanges/f1/fasteners/0', /lies 1\.1 mm off the plate's face, into the head, .*move it 1\.1 mm out of the head/],
  ['a stud of the head between fanned ports’ plates', { ...PAIRED, port: (k) => ({ direction: [0.3 * k, 1, 0] }), flange: { plates: 'separate' } }, 'flanges/f1/fasteners/2', /off the plate's face/],
  ['the same in inches', { ...PAIRED, fastener: { thread: '5/16-18', hole: 7.9 } }, 'flanges/f1/fasteners/0/hole', /5\/16-18 does not pass through: drill about 8\.73 mm/],
  ['little land under a step', { flange: { seat: 'stepped', stepDepth: 7.5 } }, 'flanges/f1/stepDepth', /leaves 2\.5 mm of plate.*burns through/],
  ['a narrow ledge', { opening: { shape: 'round', diameter: 42 }, flange: { seat: 'stepped' } }, 'flanges/f1/seat', /ledge in the step of port p1 is 0\.4 mm wide/],
  ['a port that leans a little', { port: (k) => (k === 1 ? { direction: [0, 1, 0.05] } : {}) }, 'ports/p2/direction', /leans 1\.43° from the mean.*cut square to the plate/],
  ['a port a little off the face', { port: (k) => (k === 1 ? { position: [90, 0.4, 0] } : {}) }, 'ports/p2/position', /lies 0\.4 mm off the face/],
  ['a drawn outline with less border', drawn(square(25)), 'ports/p1/opening', /7 mm of metal is left.*its border is 8 mm by common practice/],
  ['a drawn outline with less than asked for', drawn(square(30), { border: 12.5 }), 'ports/p1/opening', /12 mm of metal is left.*its border is 12\.5 mm: draw/],
  ['no room for a weld', drawn(square(24.1), { border: 5 }), 'flanges/f1/outline', /2\.9 mm of face is left.*its weld wants 3 mm/],
  ['a thin web', { flange: { outline: [[-130, -30, 0], [-62, -30, 0], [-62, -9, 0], [-28, -9, 0], [-28, -30, 0], [40, -30, 0], [40, 30, 0], [-28, 30, 0], [-28, 9, 0], [-62, 9, 0], [-62, 30, 0], [-130, 30, 0]] } }, 'flanges/f1/outline', /Between ports p1 and p2 the plate is 18 mm high.*under 20\.8 mm, 40 % of its height/],
  ['little between holes', { ports: 1, studs: [[0, 40], [12.9, 40]] }, 'flanges/f1/fasteners/1', /3\.9 mm of metal is left between the hole of fastener 1 and the hole of fastener 2.*at least 4 mm/],
]; // biome-ignore format: one line a case

test.each(warned)('made and said: %s', (_, asked, where, says) => {
  const { plates, notMade, warnings } = planOf(asked);
  expect(notMade).toEqual([]);
  expect(plates.length).toBeGreaterThan(0);
  const remark = warnings.find((r) => r.where === where && says.test(r.message));
  expect(remark, warnings.map((r) => `${r.where}: ${r.message}`).join('\n')).toBeDefined();
});

const fine: readonly (readonly [string, Asked])[] = [
  ['plate of 8 mm', { flange: { thickness: 8 } }],
  ['a washer just beside the weld', { ports: 1, studs: [[31.33, 0]] }],
  ['land of 3 mm', { flange: { seat: 'stepped', stepDepth: 7 } }],
  ['a drawn outline with its border, and a web just high enough', { flange: { outline: [[-130, -30, 0], [-62, -30, 0], [-62, -10.4, 0], [-28, -10.4, 0], [-28, -30, 0], [40, -30, 0], [40, 30, 0], [-28, 30, 0], [-28, 10.4, 0], [-62, 10.4, 0], [-62, 30, 0], [-130, 30, 0]] } }],
  ['a fastener at the farthest', { studs: [[-81.9, 0]] }],
  ['a fastener a millimetre off the face', { ports: 1, studs: [[-38, 0]], fastener: { position: [-38, 0.99, 0] } }],
  ['fanned ports on separate plates, without fasteners', { ...PAIRED, studs: [], port: (k) => ({ direction: [0.3 * k, 1, 0] }), flange: { plates: 'separate' } }],
  ['ports whose ups cancel out', { ...PAIRED, port: (k) => ({ up: [0, 0, k === 0 ? 1 : -1] }) }],
  ['a fine hole', { ...PAIRED, fastener: { hole: 8.4 } }],
  ['a thread that is in no table, its hole larger', { ...PAIRED, fastener: { thread: '5/16-18', hole: 8.7 } }],
  ['a fastener that names no thread', { ...PAIRED, fastener: { thread: '?' } }],
]; // biome-ignore format: one line a case

test.each(fine)('nothing to say: %s', (_, asked) => {
  const { notMade, warnings } = planOf(asked);
  expect([...notMade, ...warnings]).toEqual([]);
});

test('in inches where the design is', () => {
  const { warnings } = planOf({ display: 'in', flange: { thickness: 6.35 } });
  expect(warnings[0]!.message).toMatch(/0\.25 in thick/);
});

describe('the notes for the drawing', () => {
  test('say material, holes and how to weld', () => {
    const [notes] = planOf({ ...PAIRED, flange: { material: 'mild-steel', seat: 'stepped' } }).notes;
    expect(notes).toContain('10 mm mild steel, 1 off.');
    expect(notes).toContain('4 holes 9 mm for M8, ISO 273 medium.');
    expect(notes).toContain('Steps (ETCH) milled 5 mm deep from the outer face; not cut through.');
    expect(notes!.join(' ')).toMatch(/Bolt down .* while welding.* face flat/);
  });
  test('of separate plates: each its own holes and half holes, none counted for another', () => {
    const { notes, plates } = planOf({ ...ROW, flange: { plates: 'separate' } });
    expect(notes).toHaveLength(plates.length);
    expect(notes.map(([first]) => first)).toEqual(
      ['p1', 'p2', 'p3'].map((port) => `10 mm mild steel, 1 off, one of 3 plates, for port ${port}.`),
    );
    const [left, middle] = notes;
    expect(left).toContain('2 holes 9 mm for M8, ISO 273 medium.');
    expect(left!.join(' ')).toMatch(/2 half holes 9 mm .*: fasteners 3 and 4 are shared with/);
    expect(middle!.join(' ')).toMatch(/4 half holes 9 mm .*: fasteners 3, 4, 5 and 6 are shared/);
    expect(middle!.join(' ')).not.toMatch(/\d holes/);
  });
  test('of plates that are alike, say so; of plates that differ in a hole, not', () => {
    const first = (asked: Asked) => planOf({ ...asked, flange: { plates: 'separate' } }).notes.map(([line]) => line);
    expect(first(PAIRED)).toEqual([
      '10 mm mild steel, 1 off, one of 2 plates, for port p1; alike: that of port p2.',
      '10 mm mild steel, 1 off, one of 2 plates, for port p2; alike: that of port p1.',
    ]);
    const moved = { ...PAIRED, studs: [[-38, 0], [38, 0], [72, 0], [148.5, 0]] } as const; // biome-ignore format: one line
    expect(first(moved).join(' ')).not.toMatch(/alike/);
  });
});
