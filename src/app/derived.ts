/**
 * What follows from the design, worked out once for each design and shared by the 3D view, the rack and the tables.
 * Never stored or undone. Measuring every rule takes longer than a frame, so it runs in a worker; the last answer stays
 * up meanwhile, marked as being checked.
 */
import { useEffect } from 'react';
import { create } from 'zustand';
import {
  type BendTable,
  bendTable,
  type CheckReport,
  type Header,
  type ResolvedRunner,
  resolveHeader,
} from '../../geometry';
import type { Design } from '../../shared/design/types';
import { remembered } from '../../shared/remember';
import { type DocumentState, documents, useDocument } from './document';
import { endGroups } from './rack/ends';
import { type Strip, stripOf } from './rack/strip';
import { useSession } from './session';
import { createChecker } from './workers/checker';

/** One answer kept, for the same argument asked again: designs are immutable and the newest is the one asked for. */
function latest<A extends object, B>(work: (of: A, before?: B) => B): (of: A) => B {
  let kept: { of: A; answer: B } | null = null;
  return (of) => {
    if (kept?.of !== of) kept = { of, answer: work(of, kept?.answer) };
    return kept.answer;
  };
}

export const headerOf: (design: Design) => Header = latest(resolveHeader);

const bendTableOf = remembered(({ centerline, start }: ResolvedRunner): BendTable | null =>
  centerline ? bendTable(centerline, start.up) : null,
);

/** Bend rows and clocking by runner id; runners without points are left out. */
export const bendTablesOf: (header: Header) => ReadonlyMap<string, BendTable> = latest((header: Header) => {
  const tables = new Map<string, BendTable>();
  for (const runner of header.runners) {
    const table = bendTableOf(runner);
    if (table) tables.set(runner.runner.id, table);
  }
  return tables;
});

/** A runner unrolled, as the rack hangs it and the tables count it. */
export const unrolled: (runner: ResolvedRunner) => Strip = remembered((runner) =>
  stripOf(runner, bendTableOf(runner) ?? undefined),
);

export const endGroupsOf = remembered((header: Header) => endGroups(header.runners.map(unrolled), header.groups));

/** The header as it is drawn now, also in the middle of a gesture. Null until a design is open. */
export const useHeader = (): Header | null => useDocument((s) => (s.design ? headerOf(s.design) : null));

export type ReportState = {
  /** The last answer; null until the first. */
  readonly report: CheckReport | null;
  /** The design that `report` is about. */
  readonly of: Design | null;
  /** True while a newer design is being measured. */
  readonly checking: boolean;
  /** Why measuring failed, where it did. */
  readonly error: string | null;
};

export const useReport = create<ReportState>()(() => ({ report: null, of: null, checking: false, error: null }));

/** Keeps the report up to date with the document; mounted once by the app. */
export function useChecking(): void {
  useEffect(() => {
    const checker = createChecker((answer) => {
      // What is drawn may have brought its own report meanwhile: an older answer has nothing to add.
      const { design } = documents.store.getState();
      if (answer.design !== design && useReport.getState().of === design) return;
      useReport.setState(
        'report' in answer
          ? { report: answer.report, of: answer.design, checking: answer.more, error: null }
          : { checking: answer.more, error: answer.error },
      );
    });
    const look = (now: DocumentState, before?: DocumentState) => {
      if (!now.design || (before && now.design === before.design && now.meshes === before.meshes)) return;
      if (now.cause.kind === 'open' && now.design === now.settled && now.settled !== before?.settled)
        useReport.setState({ report: null, of: null });
      // A pin shows where a problem was: once the design is another, it may be nowhere.
      if (before && now.design !== before.design) useSession.getState().setMark(null);
      // A hand's answers come with their check.
      if (useReport.getState().of === now.design && now.meshes === before?.meshes) return;
      useReport.setState({ checking: true });
      checker.ask(now.design, now.meshes);
    };
    look(documents.store.getState());
    const stop = documents.store.subscribe(look);
    return () => {
      stop();
      checker.end();
    };
  }, []);
}
