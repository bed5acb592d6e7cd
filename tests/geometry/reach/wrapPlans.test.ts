/** Where the wrap must end, by hand-made cases; what is left of it held against the exact distances of tubes and solids. mm. */
import { expect, it } from 'vitest';
import { resolveHeader } from '../../../geometry';
import { chain } from '../../../geometry/clearance/chain';
import { capsuleShape, cylinderShape } from '../../../geometry/clearance/shapes';
import { tubeToShape } from '../../../geometry/clearance/tubeShape';
import { accessReport } from '../../../geometry/reach/accessReport';
import { withWrapEnds } from '../../../geometry/reach/wrapEnds';
import { wrapPlans } from '../../../geometry/reach/wrapPlans';
import type { Design } from '../../../shared/design/types';
import { socketSize, WORKING_CLEARANCE } from '../../../shared/stock/tools';
import { bench, entriesOf, TUBE_RADIUS } from './bench';

const WRAP = { thickness: 1.5, layers: 2, roll: 20 };
const THICK = 3;
const plansOf = (design: Design) => wrapPlans(resolveHeader(design));

/** Along the stud, one ratchet's head off and 1 mm more: bare it passes, wrapped it does not. */
const x = socketSize(13, false).diameter / 2 + WORKING_CLEARANCE + TUBE_RADIUS + 8;
const barred = bench({
  access: { tools: ['socket'], extensions: [150] },
  tubes: [[[x, -300, 0], [x, 600, 0]]], // biome-ignore format: one line
  wrap: WRAP,
});

it('no wrap, no plans', () => {
  const { wrap: _wrap, ...bare } = barred;
  expect(plansOf(bare)).toEqual([]);
});

it('ends where a tool needs room, and then the tool has it', () => {
  const report = accessReport(resolveHeader(barred));
  expect(report.entries[0]!.reach).toBe('before-wrapping');
  const [plan] = report.wrap;
  expect(plan!.wrapped).toEqual([[0, 900]]);
  expect(plan!.bare.map((b) => [b.why, b.of])).toEqual([['fastener', 'f1 stud 1']]);
  const ended = withWrapEnds(barred, report.wrap);
  const entry = entriesOf(ended)[0]!;
  expect(entry.reach).toBe('reachable');

  // Exactly: each wrapped stretch, flat at its ends, against the tool as it stands.
  const { centerline: line } = resolveHeader(ended).runners[0]!;
  const gaps = ended.runners[0]!.wrapped!.flatMap(([from, to]) =>
    entry.best!.solids.map((solid) => {
      const shape = solid.shape === 'cylinder' ? cylinderShape(solid) : capsuleShape(solid);
      return tubeToShape(chain(line!, TUBE_RADIUS + THICK, from, to)!, shape)!.gap;
    }),
  );
  expect(Math.min(...gaps)).toBeGreaterThan(WORKING_CLEARANCE - 0.05);
  // And no more is left off than a few of the wrap's thicknesses beyond what the tool covers.
  const { from, to } = plan!.bare[0]!;
  expect(to - from).toBeLessThan(28 + 24 + 10 + 10 + 4 * 12);
});

it('what reaches with wrap on stays wrapped', () => {
  const far = bench({ tubes: [[[150, -300, 0], [150, 600, 0]]], wrap: WRAP }); // biome-ignore format: one line
  const [plan] = plansOf(far);
  expect(plan!.possible).toEqual([[0, 900]]);
  expect(plan!.bare).toEqual([]);
  expect(withWrapEnds(far, [plan!])).toEqual(far);
});

it.each([
  ['as wide as the roll and both wraps, to a hundredth', 0.01, 0],
  ['a hundredth narrower', -0.01, 2],
])('between two tubes a gap %s', (_, more, bare) => {
  const pitch = 2 * TUBE_RADIUS + WRAP.roll + 2 * THICK + more;
  const tube = (offset: number) => [[500 + offset, 100, 0], [500 + offset, 400, 0]] as const; // biome-ignore format: one line
  const plans = plansOf(bench({ tubes: [tube(0), tube(pitch)], wrap: WRAP }));
  expect(plans.filter((p) => p.bare.length > 0)).toHaveLength(bare);
  for (const p of plans)
    for (const b of p.bare) expect(b).toEqual({ from: 0, to: 300, why: 'narrow', of: p.runner === 'r1' ? 'r2' : 'r1' });
});

it('a gap to what stands around needs room for one wrap and the roll', () => {
  const tube = [[500, 100, 0], [500, 400, 0]] as const; // biome-ignore format: one line
  const beside = (gap: number) =>
    bench({
      tubes: [tube],
      wrap: WRAP,
      surroundings: [{ id: 'pipe', shape: 'box', min: [500 + TUBE_RADIUS + gap, 200, -9], max: [700, 250, 9] }],
    });
  expect(plansOf(beside(23.1))[0]!.bare).toEqual([]);
  const [found] = plansOf(beside(22.9))[0]!.bare;
  expect(found).toMatchObject({ why: 'narrow', of: 'pipe' });
  // The box lies from 100 to 150 along the tube, and a roll cannot pass it to either side of that for a little.
  expect(found!.from).toBeGreaterThan(90);
  expect(found!.from).toBeLessThanOrEqual(101);
  expect(found!.to).toBeGreaterThanOrEqual(149);
});

it('a bung is left bare, a sliver beside it too, and what the design leaves bare is told apart', () => {
  const base = bench({ tubes: [[[500, 100, 0], [500, 400, 0]]], wrap: WRAP }); // biome-ignore format: one line
  const design: Design = {
    ...base,
    runners: [{ ...base.runners[0]!, wrapped: [[60, 300]] }],
    sensors: [{ id: 'lambda', kind: 'oxygen', on: { runner: 'r1' }, at: 250, clock: 0 }],
  };
  const [plan] = plansOf(design);
  // 25 mm on either side of the bung, and the 25 that are left to the end are enough; at 252 they are not.
  expect(plan!.possible).toEqual([[0, 225], [275, 300]]); // biome-ignore format: one line
  expect(plan!.bare.map((b) => [b.from, b.to, b.why])).toEqual([[0, 60, 'as-drawn'], [225, 275, 'sensor']]); // biome-ignore format: one line
  const later = { ...design, sensors: [{ ...design.sensors![0]!, at: 252 }] };
  expect(plansOf(later)[0]!.possible).toEqual([[0, 227]]);
  expect(withWrapEnds(later, plansOf(later)).runners[0]!.wrapped).toEqual([[60, 227]]);
});
