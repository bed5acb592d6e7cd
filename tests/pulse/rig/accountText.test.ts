/** The account in words: many steps done again are worth a remark, and what it advises helps. */
import { expect, test } from 'vitest';
import { accountText } from '../../../src/pulse/rig/accountText';
import { bothEnds, pipe, ran, rig } from '../rigs';

/** A tube that bursts with ten million to one. */
const burst = (courant: number) => {
  const initial = [
    { from: 0, to: 0.5, pressure: 1e9, temperature: 3000, velocity: 0 },
    { from: 0.5, to: 1, pressure: 100, temperature: 300, velocity: 0 },
  ];
  const pipes = [pipe('a', { cells: 50, initial })];
  return ran(rig({ pipes, ends: bothEnds('a', 'closed'), duration: 5e-4, courant }));
};

test('steps done again', () => {
  const [hasty, calm] = [burst(1), burst(0.8)];
  expect(hasty.retries / hasty.steps).toBeGreaterThan(0.1);
  expect(accountText(hasty)).toMatch(/\n\d+ steps, .*\nmore than one step in ten had to be done again, .*"courant"/);
  expect(accountText(calm)).not.toContain('more than one');
  expect(calm.steps + calm.retries).toBeLessThan(hasty.steps + hasty.retries);
});
