/** The designs kept in this browser: each in two copies, with its versions, its file, its meshes and what was ticked off beside it. */
import type { TriangleSoup } from '../../../geometry';
import type { Backend } from './backend';
import { type KeptDesign, type KeptVersion, readKeptDesign, readKeptVersion } from './keptDesign';
import { keepMesh, readMesh, tidyMeshes } from './meshBytes';
import { seal, unseal } from './seal';
import { readNewest, removeCopies, writeNext } from './twoCopies';

/** The file on disk that a design is saved to. `handle` is the browser's own, `modified` what the file said last. */
export type FileLink<Handle = unknown> = { readonly handle: Handle; readonly modified: number };

/** All of one design, to be put back as it was. */
export type Removed = {
  readonly design: KeptDesign;
  readonly versions: readonly KeptVersion[];
  readonly link: FileLink | null;
  /** What was ticked off at the workbench, as text. */
  readonly ticks?: string | null;
  /** What studies of its sizes have found, as text, by where they lie. */
  readonly studies?: readonly (readonly [key: string, text: string])[];
};

const designKey = (id: string) => `design/${id}`;
const linkKey = (id: string) => `file/${id}`;
const versionKey = (of: string, id = '') => `version/${of}/${id}`;
const ticksKey = (id: string) => `ticks/${id}`;
/** One for each engine that it had, so that trying another loses nothing. One without an engine is from before that. */
const studyKey = (id: string, engine?: string) => (engine === undefined ? `study/${id}` : `study/${id}/${engine}`);
const LAST = 'last';

export function createKept(backend: Backend) {
  const ids = async () => [...new Set((await backend.keys('design/')).map((key) => key.split('/')[1]!))];
  const readVersion = async (key: string): Promise<KeptVersion[]> => {
    const version = readKeptVersion((await unseal(await backend.get(key)))?.text ?? '');
    return version ? [version] : [];
  };
  const studiesOf = async (id: string): Promise<readonly (readonly [key: string, text: string])[]> => {
    const keys = [studyKey(id), ...(await backend.keys(studyKey(id, '')))];
    const read = await Promise.all(
      keys.map(async (key) => [key, (await unseal(await backend.get(key)))?.text] as const),
    );
    return read.flatMap(([key, text]) => (text === undefined ? [] : [[key, text] as const]));
  };

  const kept = {
    /** Those that can be read, the last changed first. */
    async list(): Promise<KeptDesign[]> {
      const read = await Promise.all((await ids()).map((id) => kept.read(id)));
      return read.filter((d) => d !== null).sort((a, b) => b.changed - a.changed);
    },

    /** @param usable looks into it; where it says no, the copy before it is tried */
    read(id: string, usable: (design: KeptDesign) => boolean = () => true): Promise<KeptDesign | null> {
      return readNewest(backend, designKey(id), (text) => {
        const design = readKeptDesign(text);
        return design && usable(design) ? design : null;
      });
    },

    write: (design: KeptDesign): Promise<void> => writeNext(backend, designKey(design.id), JSON.stringify(design)),

    async versions(of: string): Promise<KeptVersion[]> {
      const read = await Promise.all((await backend.keys(versionKey(of))).map(readVersion));
      return read.flat().sort((a, b) => b.at - a.at);
    },

    async writeVersion(version: KeptVersion): Promise<void> {
      await backend.put(versionKey(version.of, version.id), await seal({ number: 1, text: JSON.stringify(version) }));
    },

    removeVersion: ({ of, id }: KeptVersion): Promise<void> => backend.remove(versionKey(of, id)),

    async link(id: string): Promise<FileLink | null> {
      return ((await backend.get(linkKey(id))) as FileLink | undefined) ?? null;
    },

    setLink: (id: string, link: FileLink): Promise<void> => backend.put(linkKey(id), link),

    /** What was ticked off at the workbench, as it was written; null where nothing was, or what is there is not whole. */
    async ticks(id: string): Promise<string | null> {
      return (await unseal(await backend.get(ticksKey(id))))?.text ?? null;
    },
    async setTicks(id: string, text: string): Promise<void> {
      await backend.put(ticksKey(id), await seal({ number: 1, text }));
    },

    /**
     * What a study of its sizes has found, as it was written; null where there was none, or what is there is not whole.
     * @param engine hash of it
     */
    async study(id: string, engine: string): Promise<string | null> {
      const own = await unseal(await backend.get(studyKey(id, engine)));
      return (own ?? (await unseal(await backend.get(studyKey(id)))))?.text ?? null;
    },
    async setStudy(id: string, engine: string, text: string): Promise<void> {
      await backend.put(studyKey(id, engine), await seal({ number: 1, text }));
    },

    /** Takes a design out; what it answers puts it back. Null where there was none. */
    async remove(id: string): Promise<Removed | null> {
      const [design, versions, link] = [await kept.read(id), await kept.versions(id), await kept.link(id)];
      const ticks = await kept.ticks(id);
      const studies = await studiesOf(id);
      await removeCopies(backend, designKey(id));
      for (const version of versions) await kept.removeVersion(version);
      await backend.remove(linkKey(id));
      await backend.remove(ticksKey(id));
      for (const [key] of studies) await backend.remove(key);
      return design && { design, versions, link, ticks, studies };
    },

    async restore({ design, versions, link, ticks, studies = [] }: Removed): Promise<void> {
      await kept.write(design);
      for (const version of versions) await kept.writeVersion(version);
      if (link) await kept.setLink(design.id, link);
      if (ticks) await kept.setTicks(design.id, ticks);
      for (const [key, text] of studies) await backend.put(key, await seal({ number: 1, text }));
    },

    keepMesh: (soup: TriangleSoup): Promise<string | null> => keepMesh(backend, soup),
    readMesh: (name: string): Promise<TriangleSoup | null> => readMesh(backend, name),

    /** Clears meshes away that no design names. Only while no other page is open. */
    async tidy(): Promise<void> {
      const designs = await kept.list();
      // One that cannot be read, by a later version of this app perhaps, may name any of them.
      if (designs.length < (await ids()).length) return;
      await tidyMeshes(backend, new Set(designs.flatMap((d) => Object.values(d.meshes))));
    },

    /** The design that was worked on last. */
    async last(): Promise<string | null> {
      const id = await backend.get(LAST);
      return typeof id === 'string' ? id : null;
    },
    setLast: (id: string): Promise<void> => backend.put(LAST, id),
  };
  return kept;
}

export type Kept = ReturnType<typeof createKept>;
