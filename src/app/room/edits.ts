/** What the Room leaf changes in the design, each as one step of history. */
import { checked, type Edited, setFields } from '../../../shared/design/edit';
import type { Access, Design } from '../../../shared/design/types';
import { applyEdit } from '../inspect/applyEdit';
import { tellFailure } from '../notices';
import { useRoomLook } from './look';
import { usualHeat, usualRock, usualWrap } from './proposals';

/** Says aloud where it could not be made, as no field stands beside a button. */
export function act(make: (design: Design) => Edited, label: string): void {
  const problem = applyEdit(make, label);
  if (problem !== null) tellFailure(`Not done: ${label.toLowerCase()}`, problem);
}

export const addRock = () =>
  act((now) => checked({ ...now, motion: { ...now.motion, rock: usualRock(now) } }), 'Let the engine roll');
export const addHeat = () =>
  act((now) => checked({ ...now, motion: { ...now.motion, heat: usualHeat } }), 'Let the tubes grow with heat');
export const addWrap = () => {
  act((now) => checked({ ...now, wrap: usualWrap }), 'Wrap the header');
  useRoomLook.getState().set({ wrapDrawn: true });
};

export const removeRock = () => act((now) => withoutMotion(now, 'rock'), 'Hold the engine still');
export const removeHeat = () => act((now) => withoutMotion(now, 'heat'), 'Keep the tubes cold');
export const removeWrap = () => act((now) => setFields(now, [[['wrap'], undefined]]), 'Take the wrap off');

/** The whole entry goes with its last. */
function withoutMotion(design: Design, part: 'rock' | 'heat'): Edited {
  const other = part === 'rock' ? design.motion?.heat : design.motion?.rock;
  return setFields(design, [[other ? ['motion', part] : ['motion'], undefined]]);
}

/** Fields that hold nothing go, and the entry with the last of them. */
export function setAccess(change: { readonly [K in keyof Access]?: Access[K] | undefined }, label: string): void {
  act((now) => {
    const next = Object.fromEntries(Object.entries({ ...now.access, ...change }).filter(([, v]) => v !== undefined));
    return Object.keys(next).length > 0
      ? checked({ ...now, access: next as Access })
      : setFields(now, [[['access'], undefined]]);
  }, label);
}
