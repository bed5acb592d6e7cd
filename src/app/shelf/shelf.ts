/**
 * Several designs, one of them open. Ties the document store to what is kept: leaving a design keeps it, returning finds
 * it as it was left, with its steps where this page still has them. Knows no screen; what it stands on is handed in.
 */
import type { Meshes } from '../../../geometry';
import { parseDesign } from '../../../shared/design/parse';
import type { Design } from '../../../shared/design/types';
import { writeDesign } from '../../../shared/design/write';
import { meshFilesOf } from '../actions/readFiles';
import type { DocumentState, DocumentStore } from '../document';
import { freshId } from '../freshId';
import type { FileLink, Kept } from '../storage/kept';
import type { KeptDesign, KeptVersion, Origin } from '../storage/keptDesign';
import type { HoldEvents, Holds } from './holds';
import { createKeeper, type KeeperParts } from './keeper';
import { copyName, stemOf, titleOf } from './names';
import type { ShelfStore } from './shelfState';

export type ShelfParts = Pick<KeeperParts, 'now' | 'later' | 'tooLarge'> & {
  readonly documents: DocumentStore;
  readonly kept: Kept;
  readonly state: ShelfStore;
  holds(events: HoldEvents): Holds;
  /** Readies meshes for whoever measures against them, before their design is shown. */
  prepare?(design: Design, meshes: Meshes): Promise<void>;
  /** Remembers which design this page has open, for when it is loaded again. */
  remember(id: string): void;
};

const ELSEWHERE = 'It is open in another tab; close it there first.';

export function createShelf(parts: ShelfParts) {
  const { documents, kept, state } = parts;
  /** As this page left them, so that steps and objects stay the same for who returns. */
  const left = new Map<string, DocumentState>();
  const now = () => documents.store.getState();

  const list = (design: KeptDesign) =>
    state.setState(({ designs }) => ({
      designs: [design, ...designs.filter((d) => d.id !== design.id)].sort((a, b) => b.changed - a.changed),
    }));
  const unlist = (id: string) => state.setState(({ designs }) => ({ designs: designs.filter((d) => d.id !== id) }));
  const relist = async (id: string) => {
    const design = await read(id);
    if (design) list(design);
  };

  const keeper = createKeeper({
    ...parts,
    stands: list,
    wrote: (id) => holds.tellWritten(id),
    trouble: (trouble) => state.setState({ trouble }),
  });

  const holds = parts.holds({
    async asked(id) {
      if (id === now().id) documents.setReadOnly(true);
      await keeper.flush();
    },
    lost(id) {
      if (id === now().id) documents.setReadOnly(true);
    },
    granted: (id) => void refresh(id, false),
    written: (id) => void (id === now().id && now().readOnly ? refresh(id, true) : relist(id)),
  });

  const sound = (design: KeptDesign): boolean => {
    try {
      parseDesign(design.text);
      return true;
    } catch {
      return false;
    }
  };
  /** Storage that fails has nothing to say; what this page left stands then. */
  const read = (id: string) => kept.read(id, sound).catch(() => null);

  /** The meshes that a kept design names, and those that are not to be had. */
  const readMeshes = async (record: KeptDesign, design: Design) => {
    const meshes = new Map<string, NonNullable<Awaited<ReturnType<Kept['readMesh']>>>>();
    for (const [file, name] of Object.entries(record.meshes)) {
      const soup = await kept.readMesh(name).catch(() => null);
      if (soup) meshes.set(file, soup);
    }
    await parts.prepare?.(design, meshes);
    return { meshes, missing: meshFilesOf(design).filter((file) => !meshes.has(file)) };
  };

  /** What was left here if it is still that, else what is kept. */
  const recall = async (id: string) => {
    await keeper.flush();
    const record = await read(id);
    const here = id === now().id ? now() : left.get(id);
    if (here?.settled && (!record || keeper.waits(id) || record.text === writeDesign(here.settled)))
      return { ...here, settled: here.settled, missing: [] as string[], record };
    if (!record) throw new Error('The design is no longer kept in this browser.');
    const settled = parseDesign(record.text);
    const read_ = await readMeshes(record, settled);
    return { fileName: record.fileName, settled, saved: record.inFile ? settled : null, ...read_, record };
  };

  /** Another page has gone on with the design that is open here, or has let go of it. */
  const refresh = async (id: string, readOnly: boolean): Promise<void> => {
    const record = await read(id);
    const { settled, meshes, id: here } = now();
    if (here !== id || !settled) return;
    if (!record || record.text === writeDesign(settled)) return documents.setReadOnly(readOnly);
    keeper.know(record);
    const design = parseDesign(record.text);
    const found = await readMeshes(record, design);
    documents.open(design, record.fileName, new Map([...meshes, ...found.meshes]), {
      id,
      saved: record.inFile ? design : null,
      readOnly,
    });
    list(record);
  };

  let versionsAsked = 0;
  /** Read anew after each change: a list put together here could be overtaken by one still being read. */
  const showVersions = async (of: string) => {
    const asked = ++versionsAsked;
    const versions = await kept.versions(of).catch((): KeptVersion[] => []);
    if (now().id === of && asked === versionsAsked) state.setState({ versions });
  };

  const leave = async (before: DocumentState): Promise<void> => {
    const { id } = before;
    await keeper.flush();
    if (now().id === id) return;
    holds.release(id);
    const record = state.getState().designs.find((d) => d.id === id);
    if (record?.origin !== 'example' || (await kept.versions(id).catch(() => [])).length > 0) return;
    // An example as it came: it can be had again at any time.
    unlist(id);
    keeper.forget(id);
    await kept.remove(id).catch(() => {});
  };

  const stop = documents.store.subscribe((next, before) => {
    if (next.id === before.id) return;
    state.setState({ versions: [] });
    void showVersions(next.id);
    parts.remember(next.id);
    void kept.setLast(next.id).catch(() => {});
    void holds.take(next.id).catch(() => {});
    if (!before.settled) return;
    left.set(before.id, before);
    void leave(before);
  });

  const shelf = {
    /** Opens a design as a new one on the shelf; the one before it is kept. */
    open(design: Design, fileName: string, meshes: Meshes, origin: Origin, link: FileLink | null = null): string {
      const id = freshId();
      keeper.setOrigin(id, origin);
      if (link) void kept.setLink(id, link).catch(() => {});
      documents.open(design, fileName, meshes, { id, saved: origin === 'made' ? null : design });
      return id;
    },

    /** Opens one that is kept. Answers the mesh files that are not to be had. @throws where it is no longer kept */
    async returnTo(id: string): Promise<readonly string[]> {
      if (id === now().id && now().settled) return [];
      const { record, settled, fileName, meshes, saved, missing } = await recall(id);
      if (record) keeper.know(record);
      const mine = await holds.take(id).catch(() => true);
      documents.open(settled, fileName, meshes, { id, saved, readOnly: !mine });
      return missing;
    },

    /** The kept design that holds just this text under this file name, if there is one. */
    find: (fileName: string, text: string): KeptDesign | undefined =>
      state.getState().designs.find((d) => d.fileName === fileName && d.text === text),

    async rename(id: string, title: string): Promise<void> {
      if (id === now().id) {
        const { settled } = now();
        if (settled) documents.apply({ ...settled, title }, 'Rename');
        return;
      }
      await alone(id, async () => {
        const { settled, record } = await recall(id);
        if (!record) return;
        const next = { ...record, text: writeDesign({ ...settled, title }), changed: parts.now(), inFile: false };
        await kept.write(next);
        list(next);
        holds.tellWritten(id);
      });
    },

    /** A copy beside it, opened. Also of a design that another page has. */
    async duplicate(id: string): Promise<void> {
      const { settled, fileName, meshes } = await recall(id);
      const taken = new Set(state.getState().designs.map(titleOf));
      const title = copyName(settled.title?.trim() || stemOf(fileName), taken);
      shelf.open({ ...settled, title }, `${title}.evenrun.json`, meshes, 'made');
    },

    /** @param instead opens something, for when the one that is open goes and there is no other */
    async remove(id: string, instead: () => Promise<unknown>): Promise<void> {
      if (id === now().id && now().readOnly) throw new Error(ELSEWHERE);
      await keeper.flush();
      if (id === now().id) {
        const next = state.getState().designs.find((d) => d.id !== id);
        await (next ? shelf.returnTo(next.id) : instead());
        await keeper.flush();
      }
      await alone(id, async () => {
        const removed = await kept.remove(id);
        const stood = state.getState().designs.find((d) => d.id === id);
        keeper.forget(id);
        unlist(id);
        if (removed ?? stood) state.setState({ removed: removed ?? { design: stood!, versions: [], link: null } });
      });
    },

    /** Puts back what was deleted last. */
    async restore(): Promise<void> {
      const { removed } = state.getState();
      if (!removed) return;
      state.setState({ removed: null });
      list(removed.design);
      await kept.restore(removed);
    },

    async keepVersion(name: string): Promise<void> {
      const { settled, id } = now();
      if (!settled) return;
      const version = { id: freshId(), of: id, name, at: parts.now(), text: writeDesign(settled) };
      await kept.writeVersion(version);
      keeper.setOrigin(id, 'made');
      if (now().id === id) await showVersions(id);
    },
    async removeVersion(version: KeptVersion): Promise<void> {
      await kept.removeVersion(version);
      if (now().id === version.of) await showVersions(version.of);
    },
    async putBackVersion(version: KeptVersion): Promise<void> {
      await kept.writeVersion(version);
      if (now().id === version.of) await showVersions(version.of);
    },
    /** A design that is worked on at the bench is worth keeping, an example too. */
    async keepTicks(id: string, text: string): Promise<void> {
      await kept.setTicks(id, text);
      keeper.setOrigin(id, 'made');
    },
    /** One on the shelf as it stands, with its meshes. @throws where it is no longer kept */
    look: async (id: string): Promise<{ readonly design: Design; readonly meshes: Meshes }> => {
      const { settled, meshes } = await recall(id);
      return { design: settled, meshes };
    },
    /** The present state gives way to the version's, as one step that can be taken back. */
    goBackTo(version: KeptVersion): void {
      documents.apply(parseDesign(version.text), `Go back to “${version.name}”`);
    },

    takeOver: (): void => holds.takeOver(now().id),
    flush: keeper.flush,
    /** Whether something here is not kept yet. */
    waits: (): boolean => keeper.waits(),

    /** Reads the list and opens the first of these that can be; false where none can. */
    async start(tried: readonly (string | null)[]): Promise<boolean> {
      const designs = await kept.list().catch((): KeptDesign[] => []);
      state.setState({ designs });
      const last = await kept.last().catch(() => null);
      const ids = [...tried, last, ...designs.map((d) => d.id)].filter((id) => id !== null);
      const known = new Set(designs.map((d) => d.id));
      for (const id of new Set(ids)) {
        if (now().settled) return true;
        if (!known.has(id)) continue;
        try {
          await shelf.returnTo(id);
          return true;
        } catch {
          // Kept by a later version of this app, perhaps: left as it is.
        }
      }
      return false;
    },

    /** Examples that pages left behind as they came, when they were killed. */
    async tidy(): Promise<void> {
      for (const { id, origin } of state.getState().designs)
        if (origin === 'example' && id !== now().id)
          await alone(id, async () => {
            if ((await kept.versions(id)).length > 0) return;
            await kept.remove(id);
            unlist(id);
          }).catch(() => {});
    },

    stop() {
      stop();
      keeper.stop();
    },
  };

  /** Works on a design that is not open here, while no other page has it. */
  const alone = async (id: string, work: () => Promise<void>): Promise<void> => {
    const mine = await holds.take(id);
    try {
      if (!mine) throw new Error(ELSEWHERE);
      await work();
    } finally {
      if (id !== now().id) holds.release(id);
    }
  };

  return shelf;
}

export type Shelf = ReturnType<typeof createShelf>;
