/** Shaping by name: for the searchable list, the keys and the buttons of panels. */
import { addBend, anySquareTo, pathOf, removeBend, scale } from '../../../geometry';
import type { Design } from '../../../shared/design/types';
import { edit } from '../actions/edit';
import type { Action } from '../actions/list/action';
import { OPEN_FIRST } from '../actions/list/workActions';
import { headerOf } from '../derived';
import { documents } from '../document';
import { useSession } from '../session';
import { mainHandle } from './choose';
import { sketch } from './grip';
import type { Handle } from './handle';
import { openExact } from './keys';
import { lockedRunner } from './refusals';

const design = (): Design | null => documents.store.getState().settled;
const picked = () => useSession.getState().selected;

const pickedStraight = () => {
  const ref = picked();
  return ref?.kind === 'runner' && ref.straight !== undefined ? { runner: ref.id, straight: ref.straight } : null;
};
const pickedBend = () => {
  const ref = picked();
  return ref?.kind === 'runner' && ref.bend !== undefined ? { runner: ref.id, bend: ref.bend } : null;
};

/** Null where the handle can be used; what is missing otherwise. */
function missing(handle: Handle | null, pick: string): string | null {
  const now = design();
  if (!now) return OPEN_FIRST;
  const grip = handle && sketch(headerOf(now), handle);
  return grip ? grip.refusal : pick;
}

const straightHandle = (kind: 'add' | 'turn'): Handle | null => {
  const at = pickedStraight();
  return at && { kind, ...at };
};

function whyNoRemoval(): string | null {
  const [now, at] = [design(), pickedBend()];
  if (!now) return OPEN_FIRST;
  if (!at) return 'Pick a bend first';
  const runner = now.runners.find((r) => r.id === at.runner);
  if (!runner?.points) return 'Pick a bend first';
  const locked = lockedRunner(runner);
  if (locked) return locked;
  return removeBend(now, at.runner, at.bend) === now ? 'Without this bend the runner cannot reach its inlet' : null;
}

/** From the middle of the straight, pulled aside by the tube's own width so that there is something to see. */
function addHere(): void {
  const [now, at] = [design(), pickedStraight()];
  if (!now || !at || missing(straightHandle('add'), '')) return;
  const path = pathOf(now, at.runner);
  const leg = path.line.source.indexOf(path.straights[at.straight]!.first);
  const way = path.line.directions[leg]!;
  const width = now.tubes[path.runner.tube]!.outsideDiameter;
  const next = addBend(now, at.runner, at.straight, path.line.straights[leg]! / 2, scale(anySquareTo(way), width));
  edit(next, `Add a bend to ${at.runner}`);
  const last = path.straights.length - 1;
  const bend = at.straight === 0 ? 1 : at.straight === last ? path.bends.length - 1 : at.straight;
  useSession.getState().select({ kind: 'runner', id: at.runner, bend: Math.max(0, bend) });
}

function removeThis(): void {
  const [now, at] = [design(), pickedBend()];
  if (!now || !at || whyNoRemoval()) return;
  edit(removeBend(now, at.runner, at.bend), `Remove bend ${at.bend + 1} of ${at.runner}`);
  useSession.getState().select({ kind: 'runner', id: at.runner });
}

/** For what cannot be done while there is something to say against it. */
const unless = (why: () => string | null) => ({ ready: () => why() === null, why: () => why() ?? '' });
const needs = (handle: () => Handle | null, pick: string) => unless(() => missing(handle(), pick));

const PICK = 'Pick a bend, a straight, a collector, a port or a surrounding first';

export const shapeActions: readonly Action[] = [
  {
    id: 'shape.move',
    name: 'Move by…',
    group: 'Shape',
    keys: ['Shift+M'],
    also: 'exact distance type shift bend collector port',
    ...needs(() => mainHandle(picked()), PICK),
    run: () => openExact(),
  },
  {
    id: 'shape.turn',
    name: 'Turn about this straight…',
    group: 'Shape',
    keys: ['R'],
    also: 'rotate rotation twist run plane',
    ...needs(() => straightHandle('turn'), 'Pick a straight first'),
    run: () => openExact(straightHandle('turn')),
  },
  ...(['up', 'side', 'axis'] as const).map((about): Action => {
    const handle = (): Handle | null => {
      const ref = picked();
      return ref?.kind === 'merge' ? { kind: 'tilt', id: ref.id, about } : null;
    };
    const name = {
      up: 'Tilt this collector sideways…',
      side: 'Tilt this collector up or down…',
      axis: 'Twist this collector…',
    };
    return {
      id: `shape.tilt-${about}`,
      name: name[about],
      group: 'Shape',
      also: 'rotate turn angle merge',
      ...needs(handle, 'Pick a collector first'),
      run: () => openExact(handle()),
    };
  }),
  {
    id: 'shape.add-bend',
    name: 'Add a bend here',
    group: 'Shape',
    keys: ['Insert'],
    also: 'new point split straight',
    ...needs(() => straightHandle('add'), 'Pick a straight first'),
    run: addHere,
  },
  {
    id: 'shape.remove-bend',
    name: 'Remove this bend',
    group: 'Shape',
    keys: ['Delete'],
    also: 'take out delete point straighten',
    ...unless(whyNoRemoval),
    run: removeThis,
  },
];
