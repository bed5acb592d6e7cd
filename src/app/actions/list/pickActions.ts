/** Picking by keys what the pointer picks elsewhere: runner by runner, bend by bend, all of them, nothing. */
import { bends } from '../../../../geometry';
import { headerOf } from '../../derived';
import { documents } from '../../document';
import { type Ref, useSession } from '../../session';
import type { Action } from './action';
import { hasDesign, OPEN_FIRST } from './workActions';

const header = () => {
  const { design } = documents.store.getState();
  return design && headerOf(design);
};
const runners = () => header()?.runners ?? [];
const picked = (): Ref | null => useSession.getState().selected;

/** The next of `count` in a ring; the first (or, backward, the last) where none is picked yet. */
export const nextIn = (count: number, now: number, step: 1 | -1): number =>
  now < 0 ? (step > 0 ? 0 : count - 1) : (now + step + count) % count;

function pickRunner(step: 1 | -1): void {
  const ids = runners().map((r) => r.runner.id);
  const now = picked();
  const id = ids[nextIn(ids.length, now?.kind === 'runner' ? ids.indexOf(now.id) : -1, step)];
  if (id !== undefined) useSession.getState().select({ kind: 'runner', id });
}

/** Bends of the picked runner, or of the first. */
function bendsInReach(): { id: string; count: number; now: number } | null {
  const now = picked();
  const runner = runners().find((r) => now?.kind !== 'runner' || r.runner.id === now.id);
  if (!runner?.centerline) return null;
  const count = bends(runner.centerline).length;
  return { id: runner.runner.id, count, now: now?.kind === 'runner' ? (now.bend ?? -1) : -1 };
}

function pickBend(step: 1 | -1): void {
  const reach = bendsInReach();
  if (!reach || reach.count === 0) return;
  useSession.getState().select({ kind: 'runner', id: reach.id, bend: nextIn(reach.count, reach.now, step) });
}

const hasRunners = () => runners().length > 0;
const whyNoRunners = () => (hasDesign() ? 'The design has no runners yet' : OPEN_FIRST);
const hasBends = () => (bendsInReach()?.count ?? 0) > 0;
const whyNoBends = () => (hasRunners() ? 'This runner has no bends' : whyNoRunners());

export const pickActions: readonly Action[] = [
  {
    id: 'pick.next-runner',
    name: 'Pick the next runner',
    group: 'Pick',
    keys: ['N'],
    also: 'select',
    ready: hasRunners,
    why: whyNoRunners,
    run: () => pickRunner(1),
  },
  {
    id: 'pick.previous-runner',
    name: 'Pick the previous runner',
    group: 'Pick',
    keys: ['Shift+N'],
    also: 'select last',
    ready: hasRunners,
    why: whyNoRunners,
    run: () => pickRunner(-1),
  },
  {
    id: 'pick.next-bend',
    name: 'Pick the next bend',
    group: 'Pick',
    keys: ['B'],
    also: 'select',
    ready: hasBends,
    why: whyNoBends,
    run: () => pickBend(1),
  },
  {
    id: 'pick.previous-bend',
    name: 'Pick the previous bend',
    group: 'Pick',
    keys: ['Shift+B'],
    also: 'select last',
    ready: hasBends,
    why: whyNoBends,
    run: () => pickBend(-1),
  },
  {
    id: 'pick.all-runners',
    name: 'Pick all runners',
    group: 'Pick',
    keys: ['Mod+A'],
    also: 'select every',
    ready: hasRunners,
    why: whyNoRunners,
    run: () => useSession.getState().selectAll(runners().map((r): Ref => ({ kind: 'runner', id: r.runner.id }))),
  },
  {
    id: 'pick.none',
    name: 'Let go of what is picked',
    group: 'Pick',
    also: 'deselect clear escape',
    ready: () => picked() !== null,
    why: () => 'Nothing is picked',
    run: () => useSession.getState().select(null),
  },
];
