/** What is said while something is drawn: its sizes in the unit shown, where its base lies, what to do next. Pure. */
import { DEGREES, sub } from '../../../geometry';
import type { NewShape } from '../../../shared/design/edit';
import type { Display } from '../../../shared/design/types';
import { lengthParts } from '../../../shared/units';
import type { Vec3 } from '../../../shared/vec3';
import type { Base } from './base';
import { facing, type Stroke, strokeSizes } from './shapes';
import type { DrawState } from './stroke';

const AXES = ['X', 'Y', 'Z'] as const;

/** A sixteenth of an inch has four decimals; what is round is said without. */
function short(mm: number, display: Display): string {
  const { number } = lengthParts(mm, display, display === 'in' ? 4 : 2);
  return (number.includes('.') ? number.replace(/\.?0+$/, '') : number).replace('-', '−');
}

/** The sizes of what is drawn, or the place where it would begin; null before the pointer was seen. */
export function sizeWords(state: DrawState, display: Display): string | null {
  const s = (mm: number) => short(mm, display);
  if (state.phase === 'ready')
    return state.at && `${state.at.map((x, i) => `${AXES[i]} ${s(x)}`).join('  ')} ${display}`;
  const size = state.phase === 'second' ? state.size : null;
  const [first = 0] = strokeSizes(state);
  switch (state.shape) {
    case 'box': {
      const { base, a, b } = state;
      const off = sub(b, a);
      const sides = AXES.flatMap((name, i) => {
        if (i === base.axis) return size === null ? [] : [`${name} ${s(Math.abs(size))}`];
        return [`${name} ${s(Math.abs(off[i]!))}`];
      });
      return `${sides.join(' × ')} ${display}`;
    }
    case 'cylinder':
      return `radius ${s(first)}${size === null ? '' : `, length ${s(Math.abs(size))}`} ${display}`;
    case 'capsule':
      return `length ${s(first)}${size === null ? '' : `, radius ${s(size)}`} ${display}`;
    case 'plane':
      return facingWords(facing(state));
  }
}

/** `faces +X, 30° toward −Z`. */
export function facingWords(way: Vec3): string {
  const order = [0, 1, 2].sort((i, k) => Math.abs(way[k]!) - Math.abs(way[i]!)) as [number, number, number];
  const named = (i: number) => `${way[i]! < 0 ? '−' : '+'}${AXES[i]}`;
  const [most, next, least] = order;
  const parts = [`faces ${named(most)}`];
  const angle = (i: number) => Math.round(Math.atan2(Math.abs(way[i]!), Math.abs(way[most]!)) * DEGREES);
  for (const i of [next, least]) if (angle(i) > 0) parts.push(`${angle(i)}° toward ${named(i)}`);
  return parts.join(', ');
}

/** @param on what the base lies on, as in the middle of a sentence; null: nothing is there */
export function baseWords({ axis }: Base, on: string | null): string {
  if (on) return axis === null ? `on ${on}, square to its surface` : `on ${on}, square to ${AXES[axis]}`;
  return `on the plane through the ports, square to ${AXES[axis ?? 2]}`;
}

const FIRST: Readonly<Record<NewShape, string>> = {
  box: 'Drag from one corner of its base to the other.',
  capsule: 'Drag from one end of its axis to the other.',
  cylinder: 'Drag from the middle of one end out to its rim.',
  plane: 'Drag from a place on it toward its open side. A click lays it flat on what is there.',
};
const SECOND: Readonly<Record<NewShape, string>> = {
  box: 'Now its height',
  capsule: 'Now its radius',
  cylinder: 'Now its length',
  plane: '',
};

/** Whether a first stroke has ended with nothing inside, and what it lacks. */
const lacks = (stroke: Stroke): boolean => strokeSizes(stroke).some((size) => size === 0);

export function hintWords(shape: NewShape, state: DrawState): string {
  if (state.phase === 'second') return `${SECOND[shape]}: drag, or move and click.`;
  if (state.phase === 'first' && state.pointer === null && shape !== 'plane')
    return lacks(state) ? 'Go on to where it ends, and click.' : 'Click where it ends.';
  return FIRST[shape];
}
