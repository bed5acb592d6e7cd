/**
 * Bores that change within one cell: what comes back from such a step and what goes on, as for an abrupt change of area. A taper that
 * the cells do not resolve is still the right change of area, for waves of the size that theory is for and for weak shocks.
 */
import { describe, expect, it } from 'vitest';
import { flowValue, sourceOf } from '../../reference/flow';
import { bothEnds, pipe, ran, rig } from '../rigs';
import { AMBIENT, behindShock, REST, type State, simpleWave, soundSpeed } from './rigs';

const P0 = AMBIENT.pressure;
const C0 = soundSpeed(AMBIENT.temperature);
const CELLS = 200;
const SMALL = 2e-4;

/** A 2 m pipe of 10 mm cells whose bore changes in the cell after its middle; a wave of one state comes from the left. */
function pastStep(ratio: number, coming: State, speed: number) {
  const [one, other] = [0.04, 0.04 * Math.sqrt(ratio)];
  const { profile } = ran(
    rig({
      pipes: [
        pipe('p', {
          length: 2,
          cells: CELLS,
          diameter: [
            [0, one],
            [1, one],
            [1.01, other],
            [2, other],
          ],
          initial: [
            { from: 0, to: 0.5, ...coming },
            { from: 0.5, to: 2, ...REST },
          ],
        }),
      ],
      ends: bothEnds('p', 'through'),
      duration: 0.5 / speed + 0.3 / C0,
    }),
  );
  const at = (x: number) => Math.round(x * 100 - 0.5);
  const { pressure } = profile[0]!;
  return { before: pressure[at(0.9)]! / P0, after: pressure[at(1.15)]! / P0 };
}

type Change = { S2_S1: number; R_pressure: number; T_pressure: number };
describe(`small waves at a step of one cell; ${sourceOf('ac.area_change')}`, () => {
  it.each(flowValue<Change[]>('ac.area_change'))('area ratio $S2_S1: within 1 % of the incident', (row) => {
    const { before, after } = pastStep(row.S2_S1, simpleWave(1 + SMALL), C0);
    expect(Math.abs((before - 1) / SMALL - 1 - row.R_pressure)).toBeLessThan(0.01);
    expect(Math.abs((after - 1) / SMALL - row.T_pressure)).toBeLessThan(0.01);
  });
});

type Shock = { Ms: number; S2_S1: number; p_inc_ratio: number; p1_ratio: number; p2_ratio: number };
const weak = flowValue<Shock[]>('ac.finite_area').filter(({ Ms }) => Ms <= 1.01);
describe(`weak shocks at a step of one cell; ${sourceOf('ac.finite_area')}`, () => {
  it.each(weak)(
    'Mach $Ms, area ratio $S2_S1: pressures within 1 % of the wave',
    ({ Ms, S2_S1, p1_ratio, p2_ratio }) => {
      const { before, after } = pastStep(S2_S1, behindShock(Ms), Ms * C0);
      expect(Math.abs((before - 1) / (p1_ratio - 1) - 1)).toBeLessThan(0.01);
      expect(Math.abs((after - 1) / (p2_ratio - 1) - 1)).toBeLessThan(0.01);
    },
  );
});
