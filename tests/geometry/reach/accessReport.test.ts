/** Tools held against cases made by hand: the right answer follows from a few sizes that stand beside each. mm. */
import { expect, it } from 'vitest';
import { socketSize, WORKING_CLEARANCE } from '../../../shared/stock/tools';
import { bench, entriesOf, TUBE_RADIUS, tried } from './bench';

it('a stud in the open is reached with every tool', () => {
  const [entry] = entriesOf(bench({}));
  expect(entry!.id).toBe('f1 stud 1');
  expect(entry!.where).toBe('flanges/f1/fasteners/0');
  expect(entry!.reach).toBe('reachable');
  expect(entry!.tries.map((t) => [t.kind, t.bare, t.wrapped])).toEqual(
    ['socket', 'deep-socket', 'ring-spanner', 'open-end-spanner'].map((kind) => [kind, true, true]),
  );
  expect(entry!.by).toEqual([]);
});

it('a tube right over a stud blocks it, by its name', () => {
  const tube = [[-300, 25, 0], [300, 25, 0]] as const; // biome-ignore format: one line
  const [entry] = entriesOf(bench({ tubes: [tube] }));
  expect(entry!.reach).toBe('blocked');
  expect(entry!.by).toEqual(['r1']);
  expect(entry!.message).toMatch(/f1 stud 1 cannot be reached: runner r1 is .* in the way of/);
});

/** A tube along the stud, as far off as a socket of 13 needs, and `more`. */
const besideSocket = (more: number) => {
  const x = socketSize(13, false).diameter / 2 + WORKING_CLEARANCE + TUBE_RADIUS + more;
  return [[x, -300, 0], [x, 600, 0]] as const; // biome-ignore format: one line
};
const SOCKETS = { access: { tools: ['socket', 'deep-socket'], extensions: [150] } };

it('a tube just off the socket lets it pass, and a hundredth nearer does not', () => {
  // Ratchet heads are wider than the socket: only past the end of the tube's neighbourhood could they stand, so none does here.
  const free = bench({ ...SOCKETS, tubes: [besideSocket(7.1)] });
  expect(tried(entriesOf(free)[0]!, 'socket').bare).toBe(true);
  const near = bench({ ...SOCKETS, tubes: [besideSocket(6.9)] });
  expect(tried(entriesOf(near)[0]!, 'socket').bare).toBe(false);
});
