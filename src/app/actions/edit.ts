/**
 * An edit of the design by a typed value or a choice, as one step of history. Where the header held every rule and the
 * edit breaks one, it is balanced again, in a worker, before the step is made; where that cannot be, the edit stands as it
 * was asked for and the problems say what fails. A length out of reach gives the nearest that can be had.
 */
import { create } from 'zustand';
import { limitWords, reseat } from '../../../geometry';
import type { Design } from '../../../shared/design/types';
import { share } from '../../../shared/share';
import { useReport } from '../derived';
import { documents } from '../document';
import { finishLettingGo } from '../hand/hand';
import { startTask } from '../workers/task';

/** After an edit that asked for more than can be had: the design as it came out, and the rules that stop it. */
export type OutOfReach = { readonly design: Design; readonly rules: readonly string[] };
export const useOutOfReach = create<{ readonly last: OutOfReach | null }>()(() => ({ last: null }));

/**
 * What the header is balanced again after. Surroundings are not among it: a shaft is typed in number by number, and the
 * header must not dodge every place that it passes on paper; what it comes to stand in the way of, the problems say.
 */
const SHAPING = ['ports', 'tubes', 'tooling', 'merges', 'runners', 'groups', 'clearance'] as const;

/** The edit being balanced: made as it stands by whatever comes next. */
let pending: (() => void) | null = null;

/** Makes the edit that is being balanced as it stands: called before a long job looks at the design. */
export function finishEditing(): void {
  pending?.();
}

/** The design as the last edit left it, where that broke a rule: the next may mend it, as when a place is typed in three numbers. */
let leftBroken: Design | null = null;

/** @param label names the step in history, such as "Move port p1" */
export function edit(asked: Design, label: string): void {
  finishLettingGo();
  pending?.();
  const { settled, meshes } = documents.store.getState();
  const shapes = settled && SHAPING.some((part) => settled[part] !== asked[part]);
  // Runners stay on a port or collector that was moved.
  const next = shapes ? reseat(settled, asked) : asked;
  const { report, of } = useReport.getState();
  const held = (report?.ok && of === settled) || (settled !== null && settled === leftBroken);
  if (!shapes || !held || typeof Worker === 'undefined') {
    documents.apply(next, label);
    return;
  }
  const gesture = documents.mark();
  if (!gesture) return;
  const own = documents.store.getState().gesture;
  gesture.write(next);
  const task = startTask({ job: 'settle', design: next, meshes });
  const finish = (rules: readonly string[] = []) => {
    pending = null;
    gesture.commit(label);
    const { design } = documents.store.getState();
    const report = useReport.getState();
    leftBroken = report.of === design && report.report?.ok ? null : design;
    useOutOfReach.setState({ last: rules.length > 0 && design ? { design, rules } : null });
  };
  pending = () => {
    task.cancel();
    finish();
  };
  task.result.then(
    (found) => {
      if (documents.store.getState().gesture !== own) {
        pending = null;
        return;
      }
      const drawn = share(next, found.design);
      useReport.setState({ report: found.report, of: drawn, checking: false, error: null });
      gesture.write(drawn);
      finish(limitWords(found.limits));
    },
    // Cancelled, or the worker failed: the edit stands as it was asked for.
    () => documents.store.getState().gesture === own && finish(),
  );
}
