/** The tool as a machine: each way in has a way out, and no order of events leaves a gesture open. */
import { describe, expect, it } from 'vitest';
import { distance, resolveHeader } from '../../../geometry';
import type { Vec3 } from '../../../shared/vec3';
import { byOf, type Grip, gripOf } from '../../../src/app/shape/grip';
import type { Handle } from '../../../src/app/shape/handle';
import { type Effect, holds, IDLE, type ShapeEvent, type ShapeState, step } from '../../../src/app/shape/machine';
import type { Sight } from '../../../src/app/shape/pointer';
import { four } from '../../geometry/shaping/designs';
import { type Random, random } from '../../random';

const header = resolveHeader(four);
const id = four.runners[0]!.id;
const grip = (handle: Handle): Grip => gripOf(header, handle)!;
const bend = grip({ kind: 'bend', runner: id, bend: 1 });
const merge = four.merges[0]!.id;

/** Looking along −X onto the YZ plane: a pixel is a millimetre, right is +Y, up is +Z. */
const sightAt = (x: number, y: number): Sight => ({
  from: [1000, bend.at[1] + x, bend.at[2] - y],
  way: [-1, 0, 0],
  right: [0, 1, 0],
  up: [0, 0, 1],
  back: [1, 0, 0],
  mmPerPx: 1,
});
const press = (g: Grip = bend): ShapeEvent => ({
  kind: 'press',
  grip: g,
  pointer: 1,
  at: [0, 0],
  sight: sightAt(0, 0),
  touch: false,
});
const move = (x: number, y: number, keys: { fine?: boolean; free?: boolean } = {}): ShapeEvent => ({
  kind: 'move',
  pointer: 1,
  at: [x, y],
  sight: sightAt(x, y),
  fine: keys.fine ?? false,
  free: keys.free ?? true,
});

function run(events: readonly ShapeEvent[], from: ShapeState = IDLE): { state: ShapeState; effects: Effect[] } {
  let state = from;
  const effects: Effect[] = [];
  for (const event of events) {
    const next = step(state, event);
    state = next.state;
    effects.push(...next.effects);
  }
  return { state, effects };
}
const kinds = (effects: readonly Effect[]) => effects.map((e) => e.kind);
const asked = (effects: readonly Effect[]): Vec3 => {
  const last = effects.filter((e) => e.kind === 'ask').at(-1);
  if (last?.kind !== 'ask') throw new Error('nothing asked');
  return byOf(last.amount);
};
const close = (v: Vec3) => v.map((x) => expect.closeTo(x, 9));

describe('dragging', () => {
  it('takes hold past the slop, asks, commits as one step with its name', () => {
    const { state, effects } = run([press(), move(2, 0), move(10, -20), { kind: 'release', pointer: 1 }]);
    expect(kinds(effects)).toEqual(['take', 'ask', 'commit']);
    expect(asked(effects)).toEqual(close([0, 10, 20]));
    expect(effects.at(-1)).toMatchObject({ label: `Move bend 2 of ${id}` });
    expect(state).toBe(IDLE);
  });

  it('is a click where it hardly moved', () => {
    expect(kinds(run([press(), move(1, 1), { kind: 'release', pointer: 1 }]).effects)).toEqual(['click']);
  });

  it('bails on cancel, and needs no bail before it took hold', () => {
    expect(kinds(run([press(), move(30, 0), { kind: 'cancel' }]).effects)).toEqual(['take', 'ask', 'bail']);
    expect(run([press(), { kind: 'cancel' }]).effects).toEqual([]);
  });

  it('locks to an axis and lets go of it at the second press', () => {
    const locked = run([press(), move(10, -20), { kind: 'axis', axis: 'z' }, move(30, -25)]);
    expect(asked(locked.effects)).toEqual(close([0, 0, 25]));
    expect(asked(run([{ kind: 'axis', axis: 'z' }, move(40, -25)], locked.state).effects)).toEqual(close([0, 10, 25]));
  });

  it('goes at a fifth with shift, from where it was', () => {
    const { effects } = run([press(), move(10, 0), move(20, 0, { fine: true }), move(30, 0)]);
    expect(effects.filter((e) => e.kind === 'ask').map((e) => e.kind === 'ask' && byOf(e.amount)[1])).toEqual(
      [10, 12, 22].map((x) => expect.closeTo(x, 9)),
    );
  });

  it('says why what is locked does not move, and takes no hold', () => {
    const locked = { ...four, runners: four.runners.map((r) => ({ ...r, locked: true })) };
    const refused = gripOf(resolveHeader(locked), bend.handle)!;
    const { state, effects } = run([press(refused), move(40, 0)]);
    expect(effects).toEqual([]);
    expect(state).toMatchObject({
      phase: 'pressed',
      moved: true,
      grip: { refusal: expect.stringContaining('locked') },
    });
    expect(run([{ kind: 'release', pointer: 1 }], state)).toEqual({ state: IDLE, effects: [] });
  });

  it('snaps within reach and not while Alt is held', () => {
    const target = { kind: 'plane', from: [0, 0, bend.at[2] + 20], normal: [0, 0, 1], words: 'level with it' } as const;
    const one: Grip = { ...bend, anchor: bend.at, targets: [target] };
    const near = run([press(one), move(10, -17, { free: false })]);
    expect(asked(near.effects)).toEqual(close([0, 10, 20]));
    expect(near.state).toMatchObject({ snapped: { words: ['level with it'] } });
    expect(asked(run([press(one), move(10, -17)]).effects)).toEqual(close([0, 10, 17]));
  });
});

describe('typing while dragging', () => {
  const drag = [press(), move(30, 0)];

  it('goes exactly that far the way the hand pulled, and settles when answered', () => {
    const { state, effects } = run([
      ...drag,
      { kind: 'type', text: '1' },
      { kind: 'text', field: 'distance', text: '12.5+2' },
      { kind: 'enter' },
    ]);
    expect(asked(effects)).toEqual(close([0, 14.5, 0]));
    expect(effects.at(-1)).toMatchObject({ kind: 'commit', wait: true });
    expect(step(state, { kind: 'settled' }).state).toBe(IDLE);
  });

  it('reads inches where the design shows them, and parts along X, Y and Z', () => {
    const inches = { ...bend, display: 'in' } as const;
    const { effects } = run([
      press(inches),
      move(30, 0),
      { kind: 'type', text: '1' },
      { kind: 'field', step: 1 },
      { kind: 'text', field: 'x', text: '1 5/8' },
    ]);
    expect(asked(effects)).toEqual(close([1.625 * 25.4, 30, 0]));
  });

  it('refuses nonsense in place and keeps the hold', () => {
    const { state } = run([
      ...drag,
      { kind: 'type', text: '1' },
      { kind: 'text', field: 'distance', text: '1..' },
      { kind: 'enter' },
    ]);
    expect(state).toMatchObject({ phase: 'typing', entry: { problem: expect.any(String) } });
  });

  it('lets the pointer go while the number is finished', () => {
    const { state, effects } = run([
      ...drag,
      { kind: 'type', text: '9' },
      { kind: 'release', pointer: 1 },
      move(90, 0),
    ]);
    expect(state).toMatchObject({ phase: 'typing', pointer: null });
    expect(asked(effects)).toEqual(close([0, 9, 0]));
    expect(kinds(run([{ kind: 'enter' }], state).effects)).toEqual(['commit']);
  });
});

describe('keys', () => {
  const nudge = (y: number): ShapeEvent => ({ kind: 'nudge', grip: bend, by: { kind: 'move', by: [0, y, 0] } });

  it('adds a burst up and commits it once at rest', () => {
    const { effects } = run([nudge(1), nudge(1), nudge(1), { kind: 'rest' }]);
    expect(kinds(effects).filter((k) => k !== 'wait')).toEqual(['take', 'ask', 'ask', 'ask', 'commit']);
    expect(asked(effects)).toEqual(close([0, 3, 0]));
  });

  it('opens exact entry without a pointer, for a turn as an angle', () => {
    const tilt = grip({ kind: 'tilt', id: merge, about: 'up' });
    const { state, effects } = run([
      { kind: 'exact', grip: tilt, at: null },
      { kind: 'text', field: 'angle', text: '22.5°' },
    ]);
    expect(state).toMatchObject({ entry: { fields: ['angle'], problem: null } });
    expect(effects.at(-1)).toMatchObject({ amount: { kind: 'turn', angle: expect.closeTo(Math.PI / 8, 9) } });
  });
});

describe('1,000 random sequences, seed 361', () => {
  const handles: Handle[] = [
    bend.handle,
    { kind: 'run', runner: id, straight: 1 },
    { kind: 'turn', runner: id, straight: 1 },
    { kind: 'add', runner: id, straight: 1 },
    { kind: 'merge', id: merge },
    { kind: 'tilt', id: merge, about: 'axis' },
    { kind: 'port', id: four.ports[0]!.id },
  ];
  const grips = handles.map(grip);

  function anyEvent(rnd: Random): ShapeEvent {
    const one = grips[rnd.whole(0, grips.length - 1)]!;
    const pointer = rnd.whole(1, 2);
    const at = [rnd.between(-60, 60), rnd.between(-60, 60)] as const;
    const sight = sightAt(...at);
    const by =
      one.motion.kind === 'turn'
        ? ({ kind: 'turn', angle: 0.02 } as const)
        : ({ kind: 'move', by: [1, 0, 0] } as const);
    const all: ShapeEvent[] = [
      { kind: 'over', handle: rnd() < 0.5 ? null : one.handle },
      { kind: 'press', grip: one, pointer, at, sight, touch: rnd() < 0.5 },
      { kind: 'move', pointer, at, sight, fine: rnd() < 0.5, free: rnd() < 0.5 },
      { kind: 'move', pointer: 1, at, sight, fine: false, free: false },
      { kind: 'release', pointer },
      { kind: 'cancel' },
      { kind: 'axis', axis: 'xyz'[rnd.whole(0, 2)] as 'x' },
      { kind: 'type', text: '-4'[rnd.whole(0, 1)]! },
      { kind: 'exact', grip: one, at: null },
      {
        kind: 'text',
        field: (['distance', 'x', 'angle'] as const)[rnd.whole(0, 2)]!,
        text: ['12', '1 5/8', 'x', ''][rnd.whole(0, 3)]!,
      },
      { kind: 'field', step: 1 },
      { kind: 'enter' },
      { kind: 'nudge', grip: one, by },
      { kind: 'rest' },
      { kind: 'settled' },
    ];
    return all[rnd.whole(0, all.length - 1)]!;
  }

  it('open a gesture only when none is, end each exactly once, and ask only while one is open', () => {
    const rnd = random(361);
    let taken = 0;
    for (let k = 0; k < 1000; k++) {
      let state: ShapeState = IDLE;
      let open = false;
      const look = (effects: readonly Effect[]) => {
        for (const e of effects) {
          if (e.kind === 'take') {
            expect(open).toBe(false);
            open = true;
            taken++;
          } else if (e.kind === 'ask') {
            expect(open).toBe(true);
            expect([...byOf(e.amount)].every(Number.isFinite)).toBe(true);
          } else if (e.kind === 'bail' || (e.kind === 'commit' && !e.wait)) {
            expect(open).toBe(true);
            open = false;
          }
        }
      };
      for (let n = rnd.whole(5, 30); n > 0; n--) {
        const event = anyEvent(rnd);
        const next = step(state, event);
        // A value that waits for its answer is ended by the answer.
        if (state.phase === 'settling' && event.kind === 'settled') open = false;
        state = next.state;
        look(next.effects);
        expect(holds(state)).toBe(open);
      }
      look(step(state, { kind: 'cancel' }).effects);
      expect(open).toBe(false);
    }
    expect(taken).toBeGreaterThan(500);
  });
});

it('asks for designs that moved by what it was asked', () => {
  const next = bend.ask(four, { kind: 'move', by: [3, 4, 0] });
  const { handle } = bend;
  expect(distance(gripOf(resolveHeader(next), handle)!.anchor!, bend.anchor!)).toBeCloseTo(5, 9);
});
