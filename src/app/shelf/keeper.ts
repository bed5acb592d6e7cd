/**
 * Autosave. Watches the document store and keeps each settled state a moment after it came to be; what waits is written
 * in order, one at a time, and whatever fails is tried again. Knows no screen and no clock of its own.
 */
import { parseDesign } from '../../../shared/design/parse';
import { writeDesign } from '../../../shared/design/write';
import { meshFilesOf } from '../actions/readFiles';
import { type DocumentState, type DocumentStore, isDirty } from '../document';
import { same } from '../sameDesign';
import type { Kept } from '../storage/kept';
import type { KeptDesign, Origin } from '../storage/keptDesign';
import { type Trouble, troubleOf } from '../storage/trouble';

/** Long enough to write a burst of edits once, short enough that a killed page loses next to nothing, ms. */
export const SOON = 250;
/** After a failure, ms. */
export const AGAIN = 10_000;

export type KeeperParts = {
  readonly documents: DocumentStore;
  readonly kept: Kept;
  now(): number;
  /** Runs the work after so many ms, unless what it answers is called first. */
  later(work: () => void, ms: number): () => void;
  /** How a design now stands, whether it could be kept or not. */
  stands(design: KeptDesign): void;
  /** A design that has just been kept. */
  wrote(id: string): void;
  /** Null once everything is kept. */
  trouble(trouble: Trouble | null): void;
  /** A mesh that is too large to keep. */
  tooLarge(file: string): void;
};

/** A mesh was not kept, the design that names it was. */
class MeshFailure extends Error {
  constructor(
    readonly file: string,
    override readonly cause: unknown,
  ) {
    super(`${file} was not kept`);
  }
}

export function createKeeper(parts: KeeperParts) {
  const { documents, kept, now, later } = parts;
  /** The last state of each design that has still to be written. */
  const waiting = new Map<string, DocumentState>();
  /** What storage holds, as far as this page knows. */
  const known = new Map<string, KeptDesign>();
  const origins = new Map<string, Origin>();
  const refused = new Set<string>();
  let timer: { readonly ms: number; readonly stop: () => void } | null = null;
  let running: Promise<boolean> | null = null;

  const recordOf = (state: DocumentState, meshes: KeptDesign['meshes']): KeptDesign => {
    const { id, fileName, settled } = state;
    const text = writeDesign(settled!);
    const before = known.get(id);
    const changed = before?.text !== text;
    const origin = origins.get(id) ?? before?.origin ?? 'made';
    const dirty = isDirty(state);
    // Also where the change came before anything was kept: an example as it came is let go of when it is left.
    const asItCame = !dirty && !(before && changed);
    return {
      id,
      fileName,
      changed: changed ? now() : before.changed,
      origin: origin === 'example' && !asItCame ? 'made' : origin,
      inFile: !dirty,
      meshes,
      text,
    };
  };

  /** By file name; those that cannot be kept are left out, and the design is kept all the same. */
  const keepMeshes = async (state: DocumentState) => {
    const meshes: Record<string, string> = {};
    let failure: MeshFailure | null = null;
    for (const file of meshFilesOf(state.settled!)) {
      const soup = state.meshes.get(file);
      if (!soup) continue;
      try {
        const name = await kept.keepMesh(soup);
        if (name) meshes[file] = name;
        else if (!refused.has(file)) {
          refused.add(file);
          parts.tooLarge(file);
        }
      } catch (error) {
        failure = new MeshFailure(file, error);
      }
    }
    return { meshes, failure };
  };

  const write = async (state: DocumentState): Promise<void> => {
    const { meshes, failure } = await keepMeshes(state);
    const record = recordOf(state, meshes);
    if (!same(record, known.get(state.id))) {
      parts.stands(record);
      // What could not be opened again must not take the place of what can.
      parseDesign(record.text);
      await kept.write(record);
      known.set(state.id, record);
      origins.delete(state.id);
      parts.wrote(state.id);
    }
    if (failure) throw failure;
  };

  const run = async (): Promise<boolean> => {
    let trouble: Trouble | null = null;
    for (const [id, state] of [...waiting]) {
      waiting.delete(id);
      try {
        await write(state);
      } catch (error) {
        trouble = error instanceof MeshFailure ? troubleOf(error.cause, error.file) : troubleOf(error);
        if (!waiting.has(id)) waiting.set(id, state);
      }
    }
    parts.trouble(trouble);
    return trouble === null;
  };

  const start = (): Promise<boolean> => {
    timer?.stop();
    timer = null;
    running ??= run().finally(() => {
      running = null;
    });
    return running.then((well) => {
      if (waiting.size > 0) schedule(well ? SOON : AGAIN);
      return well;
    });
  };

  /** An earlier time already set stands: someone who edits without a pause is kept up with all the same. */
  const schedule = (ms: number) => {
    if (timer && timer.ms <= ms) return;
    timer?.stop();
    timer = { ms, stop: later(() => void start(), ms) };
  };

  const stop = documents.store.subscribe((next, before) => {
    if (!next.settled || next.readOnly) return;
    const fields = ['id', 'settled', 'saved', 'fileName', 'meshes'] as const;
    if (fields.every((field) => next[field] === before[field])) return;
    waiting.set(next.id, next);
    schedule(SOON);
  });

  return {
    /** Writes all that waits, now. True once nothing is left to write. */
    async flush(): Promise<boolean> {
      while (running) await running;
      while (waiting.size > 0) if (!(await start())) return false;
      return true;
    },
    waits: (id?: string): boolean => (id === undefined ? waiting.size > 0 : waiting.has(id)),
    /** What storage holds of a design that is about to be opened. */
    know: (design: KeptDesign): void => void known.set(design.id, design),
    /** Where a design comes from that is about to be opened, or that has become worth keeping. */
    setOrigin(id: string, origin: Origin): void {
      origins.set(id, origin);
      const state = documents.store.getState();
      if (state.id !== id || !state.settled || state.readOnly) return;
      waiting.set(id, state);
      schedule(SOON);
    },
    /** Nothing more of this design is to be written. */
    forget(id: string): void {
      waiting.delete(id);
      known.delete(id);
    },
    stop,
  };
}
