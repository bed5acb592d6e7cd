/** Drawing from pointer to shape: two strokes by dragging or by clicking, given up or dropped, in the numbers that come of it. */
import { describe, expect, it } from 'vitest';
import type { NewShape, PlacedShape } from '../../../shared/design/edit';
import type { Vec3 } from '../../../shared/vec3';
import type { Surface } from '../../../src/app/drawing/base';
import { type DrawState, READY, step, type Wish } from '../../../src/app/drawing/stroke';
import type { View } from '../../../src/app/viewport/camera/view';
import { ABOVE, FRONT, sightAt } from './sights';

const wish = (shape: NewShape): Wish => ({ shape, ports: [0, 0, 0], display: 'mm' });

/** A pen on the picture, seen from `view`; a place in the design says where on the picture. */
function pen(view: View, about: Wish) {
  let state: DrawState = READY;
  let drawn: PlacedShape | null = null;
  const tell = (event: Parameters<typeof step>[1]) => {
    const next = step(state, event, about);
    state = next.state;
    drawn = next.drawn ?? drawn;
  };
  const look = (at: Vec3, surface: Surface | null = null) => ({ ...sightAt(view, at), surface, free: false });
  return {
    press: (at: Vec3, surface?: Surface) => tell({ kind: 'press', pointer: 1, look: look(at, surface) }),
    move: (at: Vec3) => tell({ kind: 'move', look: look(at) }),
    release: () => tell({ kind: 'release', pointer: 1 }),
    tell,
    state: () => state,
    drawn: () => drawn,
  };
}

/** Presses, drags and lets go. */
function drag(hand: ReturnType<typeof pen>, from: Vec3, to: Vec3, surface?: Surface): void {
  hand.press(from, surface);
  hand.move(to);
  hand.release();
}

/** From pixels a place comes back to within this; steps are 5 mm. */
describe('by dragging', () => {
  it('a box: two corners on the plane through the ports, then a height toward the eye', () => {
    const hand = pen(ABOVE, wish('box'));
    drag(hand, [21, -38, 0], [148, 61, 0]);
    expect(hand.state().phase).toBe('second');
    drag(hand, [150, 60, 20], [150, 60, 71]);
    expect(hand.drawn()).toEqual({ shape: 'box', min: [20, -40, 0], max: [150, 60, 70] });
    expect(hand.state()).toBe(READY);
  });

  it('a box away from the eye has its corners in order all the same', () => {
    const hand = pen(ABOVE, wish('box'));
    drag(hand, [150, 60, 0], [20, -40, 0]);
    drag(hand, [20, -40, 0], [20, -40, -40]);
    expect(hand.drawn()).toEqual({ shape: 'box', min: [20, -40, -40], max: [150, 60, 0] });
  });

  it('a cylinder: middle and radius, then a height; looking along its axis, up on the picture is toward the eye', () => {
    const hand = pen(FRONT, wish('cylinder'));
    drag(hand, [20, 0, 30], [20, 0, 63]);
    // Radius 35 (rounded); the rim's place is where the height is counted from.
    drag(hand, [20, 0, 65], [20, 0, 65 + 81]);
    expect(hand.drawn()).toEqual({ shape: 'cylinder', a: [20, 0, 30], b: [20, -80, 30], radius: 35 });
  });

  it('a bar: its axis from one end to the other, then the radius by how far aside the pointer is', () => {
    const hand = pen(ABOVE, wish('capsule'));
    drag(hand, [-100, 20, 0], [120, 20, 0]);
    drag(hand, [0, 20, 0], [0, 41, 0]);
    expect(hand.drawn()).toEqual({ shape: 'capsule', a: [-100, 20, 0], b: [120, 20, 0], radius: 20 });
  });

  it('a plane faces along the stroke, in 15° steps; without one it lies flat, its open side to the eye', () => {
    const hand = pen(FRONT, wish('plane'));
    drag(hand, [40, 0, -100], [43, 0, 20]);
    expect(hand.drawn()).toEqual({ shape: 'plane', position: [40, 0, -100], normal: [0, 0, 1] });
    drag(hand, [40, 0, -100], [41, 0, -99]);
    expect(hand.drawn()).toEqual({ shape: 'plane', position: [40, 0, -100], normal: [0, -1, 0] });
    drag(hand, [0, 0, 0], [100, 0, 62]);
    const { normal } = hand.drawn() as Extract<PlacedShape, { shape: 'plane' }>;
    expect(Math.atan2(normal[2], normal[0]) * (180 / Math.PI)).toBeCloseTo(30, 3);
  });

  it('a cylinder on a surface that leans stands square to it, where it was touched', () => {
    const at: Vec3 = [10.5, -20.25, 5];
    const normal: Vec3 = [0.6, -0.8, 0];
    const hand = pen(FRONT, wish('cylinder'));
    drag(hand, at, [10.5, -20.25, 36], { at, normal });
    drag(hand, [10.5, -20.25, 35], [10.5 + 0.6 * 51, -20.25 - 0.8 * 51, 35]);
    const { a, b, radius } = hand.drawn() as Extract<PlacedShape, { shape: 'cylinder' }>;
    expect(radius).toBe(30);
    a.forEach((x, i) => void expect(x).toBeCloseTo(at[i]!, 3));
    b.forEach((x, i) => void expect(x).toBeCloseTo(at[i]! + 50 * normal[i]!, 3));
  });
});

describe('without dragging', () => {
  it('two clicks set the base and a third one the height, the pointer moving freely between', () => {
    const hand = pen(ABOVE, wish('box'));
    const click = (at: Vec3) => {
      hand.move(at);
      hand.press(at);
      hand.release();
    };
    click([20, -40, 0]);
    expect(hand.state()).toMatchObject({ phase: 'first', pointer: null });
    click([150, 60, 0]);
    expect(hand.state()).toMatchObject({ phase: 'second', pointer: null, size: 0 });
    click([150, 60, 50]);
    expect(hand.drawn()).toEqual({ shape: 'box', min: [20, -40, 0], max: [150, 60, 50] });
  });

  it('a click where there would be nothing inside ends nothing', () => {
    const hand = pen(ABOVE, wish('box'));
    drag(hand, [20, -40, 0], [150, -40, 0]);
    expect(hand.state()).toMatchObject({ phase: 'first', pointer: null });
    drag(hand, [150, 60, 0], [150, 60, 0]);
    expect(hand.state().phase).toBe('second');
    drag(hand, [150, 60, 0], [150, 60, 1]);
    expect(hand.state()).toMatchObject({ phase: 'second', pointer: null });
    expect(hand.drawn()).toBeNull();
  });
});

describe('given up', () => {
  it('a second finger takes back the stroke that is made, and no other', () => {
    const hand = pen(ABOVE, wish('box'));
    hand.press([20, -40, 0]);
    hand.move([150, 60, 0]);
    hand.tell({ kind: 'drop' });
    expect(hand.state()).toBe(READY);
    drag(hand, [20, -40, 0], [150, 60, 0]);
    hand.press([150, 60, 0]);
    hand.move([150, 60, 80]);
    hand.tell({ kind: 'drop' });
    expect(hand.state()).toMatchObject({ phase: 'second', size: 0, pointer: null, a: [20, -40, 0], b: [150, 60, 0] });
    hand.release();
    expect(hand.drawn()).toBeNull();
  });

  it('cancelled, it begins anew', () => {
    const hand = pen(ABOVE, wish('box'));
    drag(hand, [20, -40, 0], [150, 60, 0]);
    hand.tell({ kind: 'cancel' });
    expect(hand.state()).toBe(READY);
    expect(hand.drawn()).toBeNull();
  });

  it('another pointer is no end of a stroke', () => {
    const hand = pen(ABOVE, wish('cylinder'));
    hand.press([0, 0, 0]);
    hand.move([50, 0, 0]);
    hand.tell({ kind: 'release', pointer: 2 });
    expect(hand.state()).toMatchObject({ phase: 'first', pointer: 1 });
  });
});
