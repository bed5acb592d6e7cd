/** What is alike is said once, and still names every place. mm. */
import { expect, test } from 'vitest';
import { planOf, ROW } from './flanges';

const fastenersIn = (message: string): string[] => message.match(/fastener \d/g) ?? [];

test('a border far too large for many holes: one line naming all pairs', () => {
  const { warnings } = planOf({ ...ROW, flange: { border: 100 } });
  const between = warnings.filter((r) => /metal is left/.test(r.message));
  expect(between).toHaveLength(1);
  const { message, where } = between[0]!;
  expect(where).toBe('flanges/f1/border');
  expect(message).toMatch(
    /^Less metal is left than the 100 mm wanted between the opening of port p1 and the opening of port p2 \(54 mm\)/,
  );
  expect(new Set(fastenersIn(message)).size).toBe(8);
  expect(message).toMatch(/ask for a smaller border\.$/);
});

test('steps far too wide: one line for the holes and every step named; two pairs of steps are still read one by one', () => {
  const { notMade } = planOf({ ...ROW, flange: { seat: 'stepped', stepGap: 30 } });
  const holes = notMade.filter((r) => /hole/.test(r.message));
  expect(holes).toHaveLength(1);
  expect(holes[0]!.message).toMatch(
    /port p1 into fastener 1, port p1 into fastener 2, .*port p3 into fastener 8\. .*less room round the tubes than 30 mm \(stepGap\), or make the seat flush/,
  );
  expect(notMade.filter((r) => /into each other/.test(r.message))).toHaveLength(2);
});

test('studs of the head under ports that lean from it: one line', () => {
  const { warnings } = planOf({ ...ROW, port: () => ({ direction: [0, 1, -0.18] }) });
  const off = warnings.filter((r) => /off the plate's face/.test(r.message));
  expect(off).toHaveLength(1);
  expect(off[0]!.message).toMatch(/^Fasteners lie off .*: 1 by 5\.31 mm .*, 8 by 5\.31 mm .*ports' directions/);
});
