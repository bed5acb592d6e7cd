/** Tools held against cases made by hand: the right answer follows from a few sizes that stand beside each. mm. */
import { describe, expect, it } from 'vitest';
import type { Surrounding } from '../../../shared/design/types';
import { hexSize } from '../../../shared/stock/hexFasteners';
import { openEndSpanner, socketSize, WORKING_CLEARANCE } from '../../../shared/stock/tools';
import { published } from '../../reference/published';
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
  expect(entry!.message).toMatch(/f1 stud 1 cannot be reached: runner r1.* is in the way of .* by \d/);
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

it('an open-end spanner passes a tube beside it from where its head does, wrapped or bare', () => {
  const wrap = { thickness: 1.6, layers: 2, roll: 15 };
  const off = openEndSpanner(13).headWidth / 2 + WORKING_CLEARANCE + TUBE_RADIUS;
  const beside = (x: number, wrapped: boolean) => {
    const tube = [[x, -300, 0], [x, 600, 0]] as const; // biome-ignore format: one line
    const design = bench({ access: { tools: ['open-end-spanner'] }, tubes: [tube], ...(wrapped && { wrap }) });
    return tried(entriesOf(design)[0]!, 'open-end-spanner');
  };
  expect(beside(off + 0.1, false).bare).toBe(true);
  expect(beside(off - 0.1, false).bare).toBe(false);
  expect(beside(off + 3.3, true).wrapped).toBe(true);
  expect(beside(off + 3.1, true)).toMatchObject({ bare: true, wrapped: false, by: ['r1'] });
});

it('wrap alone bars the sockets: reached before wrapping only, and it is said what would mend it', () => {
  const [entry] = entriesOf(
    bench({ ...SOCKETS, tubes: [besideSocket(8)], wrap: { thickness: 1.5, layers: 2, roll: 20 } }),
  );
  expect(entry!.reach).toBe('before-wrapping');
  expect(entry!.by).toEqual(['r1']);
  // Bare it has 1 mm to spare beside the ratchet's head, and the wrap is 3 mm thick.
  expect(entry!.message).toMatch(
    /^f1 stud 1 is reached before wrapping only: wrapped, runner r1 is in the way of .* by 2(\.1)? mm/,
  );
  expect(entry!.message).toMatch(
    /Leave r1 bare from \d+ mm to \d+ mm, or move the fastener 2(\.1)? mm away from the straight of r1 at its port\.$/,
  );
});

const wallAt = (y: number): Surrounding => ({ id: 'wall', shape: 'box', min: [-400, y, -400], max: [400, y + 5, 400] });

it('a wall 24 mm in front leaves the open-end spanner alone', () => {
  // The stud stands out 10 and the nut is drawn to 16.8; a ring spanner is lifted to 19.5, but its handle rises to 49.
  const [entry] = entriesOf(bench({ surroundings: [wallAt(24)] }));
  expect(entry!.reach).toBe('one-tool');
  expect(entry!.best!.kind).toBe('open-end-spanner');
  expect(entry!.by).toEqual(['wall']);
  expect(entry!.message).toMatch(/with a 13 mm open-end spanner only: the wall is/);
});

it('a wall nearer than the nut must be drawn bars every tool', () => {
  expect(entriesOf(bench({ surroundings: [wallAt(16.8 + 1.1)] }))[0]!.reach).toBe('one-tool');
  expect(entriesOf(bench({ surroundings: [wallAt(16.8 + 0.9)] }))[0]!.reach).toBe('blocked');
});

it('so does the same wall as a scan', () => {
  const scan: Surrounding = { id: 'bay', shape: 'mesh', file: 'bay.stl' };
  const soup = (y: number) =>
    Float64Array.of(-400, y, -400, 400, y, -400, 400, y, 400, -400, y, -400, 400, y, 400, -400, y, 400);
  const at = (y: number) => entriesOf(bench({ surroundings: [scan] }), new Map([['bay.stl', soup(y)]]))[0]!;
  expect(at(24).reach).toBe('one-tool');
  expect(at(24).by).toEqual(['bay']);
  expect(at(16.8 + 0.9).reach).toBe('blocked');
});

it('a bolt must come out all the way', () => {
  const bolt = (length: number) =>
    entriesOf(bench({ fasteners: [{ kind: 'bolt', length }], surroundings: [wallAt(50)] }))[0]!;
  // 5.3 of head, the bolt, and 1 to work with.
  expect(bolt(43.6).reach).not.toBe('blocked');
  expect(bolt(43.8).reach).toBe('blocked');
  expect(bolt(43.8).by).toEqual(['wall']);
});

it('a stud that stands out farther than a socket is hollow needs a deep one', () => {
  const entry = entriesOf(bench({ fasteners: [{ length: 40 }] }))[0]!;
  expect(tried(entry, 'socket').bare).toBe(false);
  expect(tried(entry, 'deep-socket').bare).toBe(true);
});

describe('the pitch between fasteners (key wr.pitch, read in source, conservative)', () => {
  const row = (thread: string, pitch: number) => {
    const fasteners = [-pitch, 0, pitch].map((x) => ({ thread, position: [x, 0, 0] as const, length: 20 + hexSize(thread, 9).nutHeight / 2 })); // biome-ignore format: one line
    return entriesOf(bench({ fasteners }))[1]!;
  };
  const PITCHES = Object.entries(published<Record<string, [number, number]>>('wr.pitch'));

  it.each(PITCHES)('%s: every tool works at it', (thread, [pitch]) => {
    expect(row(thread, pitch).tries.map((t) => [t.kind, t.bare])).toEqual(
      ['socket', 'deep-socket', 'ring-spanner', 'open-end-spanner'].map((kind) => [kind, true]),
    );
  });

  it.each(PITCHES)('%s: none at little more than half of it', (thread, [pitch]) => {
    const entry = row(thread, 0.55 * pitch);
    expect(entry.reach).toBe('blocked');
    expect(entry.by).toContain('f1 stud 1');
  });
});

describe('only what is at hand', () => {
  it('counts, and one kind that works is enough where there is but one', () => {
    const [entry] = entriesOf(bench({ access: { tools: ['ring-spanner'] } }));
    expect(entry!.tries.map((t) => t.kind)).toEqual(['ring-spanner']);
    expect(entry!.reach).toBe('reachable');
  });

  it('and where none is for it, that is said', () => {
    const [entry] = entriesOf(bench({ access: { tools: ['strap-wrench'] } }));
    expect(entry!.reach).toBe('blocked');
    expect(entry!.best).toBeNull();
    expect(entry!.message).toMatch(/Take one to hand that is: /);
  });
});

describe('service points', () => {
  const only = (design: Parameters<typeof bench>[0]) => entriesOf(bench({ fasteners: [], ...design }))[0]!;
  const across = [[-300, 300, 0], [300, 300, 0]] as const; // biome-ignore format: one line

  it('a dipstick is drawn by its length', () => {
    const stick = (length: number) =>
      only({
        service: [{ id: 'dipstick', kind: 'dipstick', position: [0, 0, 0], direction: [0, 2, 0], length }],
        tubes: [across],
      });
    expect(stick(278).reach).toBe('reachable');
    expect(stick(280).reach).toBe('blocked');
    expect(stick(280).by).toEqual(['r1']);
    expect(stick(280).where).toBe('service/dipstick');
  });

  it('a plug stands in the head that is drawn round it, which is not in its way', () => {
    const plug = { id: 'plug 1', kind: 'spark-plug', position: [0, 0, 0], direction: [0, 1, 0] } as const;
    const head: Surrounding = { id: 'head', shape: 'box', min: [-200, -100, -200], max: [200, 40, 200] };
    expect(only({ service: [plug], surroundings: [head] }).reach).toBe('reachable');
    expect(only({ service: [plug], surroundings: [head, wallAt(150 + 0.9)] }).by).toEqual(['wall']);
  });

  it('the flange of the header can be in the way, and is named', () => {
    const plug = { id: 'plug 1', kind: 'spark-plug', direction: [0, 1, 0], diameter: 20 } as const;
    const at = (x: number) =>
      entriesOf(
        bench({ fasteners: [{ position: [0, 100, 0] }], service: [{ ...plug, position: [2000 + x, -60, 0] }] }),
      )[1]!;
    // The opening is 36 and has 8 of metal round it, the socket 22 and 1 to work with.
    expect(at(18 + 8 + 11 + 0.9).by).toEqual(['f1']);
    expect(at(18 + 8 + 11 + 0.9).message).toMatch(/flange f1 is in the way of .* by 0\.1 mm/);
    expect(at(18 + 8 + 11 + 1.1).by).not.toContain('f1');
  });

  it('a filter needs a hand or a strap round it, and room to come off', () => {
    const filter = { id: 'filter', kind: 'oil-filter', position: [0, 0, 0], direction: [0, 1, 0], diameter: 76, length: 90 } as const; // biome-ignore format: one line
    expect(only({ service: [filter] }).reach).toBe('reachable');
    expect(only({ service: [filter], surroundings: [wallAt(180.5)] }).reach).toBe('blocked');
    const beside: Surrounding = { id: 'block', shape: 'box', min: [38 + 10, 0, -200], max: [60, 85, 200] };
    const entry = only({ service: [filter], surroundings: [beside] });
    expect(entry.reach).toBe('one-tool');
    expect(entry.best!.kind).toBe('strap-wrench');
  });
});
