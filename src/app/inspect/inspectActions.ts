/** What can be done with the things picked: to edit, lock, rename, duplicate and remove them. */
import {
  type Added,
  canDuplicate,
  duplicate,
  remove,
  segmentsOf,
  setFields,
  type Thing,
} from '../../../shared/design/edit';
import type { Design } from '../../../shared/design/types';
import { HOLE_CLASSES } from '../../../shared/stock/holes';
import type { Action } from '../actions/list/action';
import { needsDesign } from '../actions/list/workActions';
import { documents } from '../document';
import { useLeaf } from '../leaf';
import { tell, tellFailure } from '../notices';
import { type Ref, useSession } from '../session';
import type { NamedAction } from './ActionButton';
import { applyEdit } from './applyEdit';
import { flangesOf, hasKnownThreads, setHoles, unknownThreads } from './holes';
import { nameOf, pickedOf } from './picked';

function things(): readonly Thing[] {
  const { settled } = documents.store.getState();
  const picked = settled && pickedOf(useSession.getState().selection, settled);
  return picked && picked.kind !== 'nothing' ? picked.things : [];
}
const design = (): Design | null => documents.store.getState().settled;
const PICK = 'Pick something first';

/** Makes an edit and says aloud where it could not be made, as no field stands beside an action. */
function act(make: Parameters<typeof applyEdit>[0], label: string): boolean {
  const problem = applyEdit(make, label);
  if (problem !== null) tellFailure(`Not done: ${label.toLowerCase()}`, problem);
  return problem === null;
}

const pickedRunners = () => things().filter((thing) => thing.kind === 'runner');
const allLocked = (): boolean => {
  const ids = new Set(pickedRunners().map(({ id }) => id));
  return design()!.runners.every((runner) => !ids.has(runner.id) || runner.locked === true);
};

/** Locks these runners, or lets them go; the layout then leaves locked ones as they are. */
export function lockRunners(ids: readonly string[], locked: boolean): void {
  const runners = ids.map((id): Thing => ({ kind: 'runner', id }));
  act(
    (now) =>
      setFields(
        now,
        runners.map((thing) => [[...segmentsOf(now, thing)!, 'locked'], locked ? true : undefined]),
      ),
    `${locked ? 'Lock' : 'Unlock'} ${nameOf(runners)}`,
  );
}

/** Adds something and picks it, to be edited. */
export function addAndPick(make: (design: Design) => Added, what: string): void {
  const { settled } = documents.store.getState();
  if (!settled) return;
  const { edited, thing } = make(settled);
  if (act(() => edited, `Add ${what === '' ? nameOf([thing]) : what}`)) useSession.getState().select(thing as Ref);
}

function removePicked(): void {
  const gone = things();
  if (act((now) => remove(now, gone), `Remove ${nameOf(gone)}`)) useSession.getState().select(null);
}

const removable = (): boolean => things().length > 0 && things().every(({ kind }) => kind !== 'design');
/** A bend or straight that is picked is shaped, not its runner removed. */
const isPart = (): boolean => {
  const { selected } = useSession.getState();
  return selected?.kind === 'runner' && (selected.bend !== undefined || selected.straight !== undefined);
};

const pickedFlanges = (): string[] => flangesOf(things());

export const holeActions = HOLE_CLASSES.map(
  (series): NamedAction => ({
    id: `inspect.holes-${series}`,
    name: `Set every hole of the flange to ISO 273 ${series}`,
    naming: () => series,
    group: 'Edit',
    also: 'clearance drill bolt stud fastener',
    ready: () => design() !== null && hasKnownThreads(design()!, pickedFlanges()),
    why: () => 'Pick a flange with metric bolts or studs first',
    run: () => {
      const flanges = pickedFlanges();
      const unknown = unknownThreads(design()!, flanges);
      const label = `Holes of ${nameOf(flanges.map((id): Thing => ({ kind: 'flange', id })))}: ISO 273 ${series}`;
      if (act((now) => setHoles(now, flanges, series), label) && unknown.length > 0)
        tell(`Holes for ${unknown.join(', ')} were left: the table of ISO 273 here has no such thread`);
    },
  }),
);

export const inspectActions: readonly (Action | NamedAction)[] = [
  {
    id: 'inspect.edit',
    name: 'Edit what is picked',
    group: 'Edit',
    keys: ['E'],
    also: 'inspect type numbers properties fields',
    ...needsDesign,
    run: () => {
      useLeaf.getState().ask('edit');
      focusFirstField();
    },
  },
  {
    id: 'inspect.lock',
    name: 'Lock or unlock the picked runners',
    naming: () => (allLocked() ? 'Unlock' : 'Lock'),
    group: 'Edit',
    keys: ['L'],
    also: 'fix hold keep free',
    ready: () => pickedRunners().length > 0,
    why: () => 'Pick a runner first',
    run: () =>
      lockRunners(
        pickedRunners().map(({ id }) => id),
        !allLocked(),
      ),
  },
  {
    id: 'inspect.rename',
    name: 'Rename what is picked',
    group: 'Edit',
    keys: ['F2'],
    also: 'name id',
    ready: () => things().length === 1 && !['engine', 'design', 'fastener'].includes(things()[0]!.kind),
    why: () => 'Pick one thing that has a name first',
    run: () => {
      useLeaf.getState().ask('edit');
      focusFirstField();
    },
  },
  {
    id: 'inspect.duplicate',
    name: 'Duplicate what is picked',
    naming: () => 'Duplicate',
    group: 'Edit',
    keys: ['Mod+D'],
    also: 'copy double again',
    ready: () => things().length === 1 && canDuplicate(things()[0]!.kind),
    why: () => (things().length === 0 ? PICK : 'This cannot be doubled: a runner needs its own port and inlet'),
    run: () => {
      const [thing] = things();
      if (!thing) return;
      const { settled } = documents.store.getState();
      const { edited, thing: copy } = duplicate(settled!, thing);
      if (act(() => edited, `Duplicate ${nameOf([thing])}`)) useSession.getState().select(copy as Ref);
    },
  },
  {
    id: 'inspect.remove',
    name: 'Remove what is picked',
    naming: () => 'Remove',
    group: 'Edit',
    keys: ['Shift+Delete'],
    also: 'delete take out',
    ready: removable,
    why: () => (isPart() ? 'Pick the whole runner first' : PICK),
    run: removePicked,
  },
  ...holeActions,
];

/** The leaf is drawn in the next frame. */
function focusFirstField(): void {
  requestAnimationFrame(() => document.querySelector<HTMLInputElement>('.inspector input')?.focus());
}
