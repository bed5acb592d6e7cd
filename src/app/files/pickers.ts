/** The browser's own file pickers that answer a handle, where it has them; and the handles of files that were dropped. */
import { type FileOnDisk, isSecondThought } from './fileOnDisk';

/** A file as it was handed over, with its handle where there is one. */
export type Picked = { readonly file: File; readonly handle: FileOnDisk | null };

type Kinds = readonly { readonly description: string; readonly accept: Readonly<Record<string, readonly string[]>> }[];
type Pickers = {
  showOpenFilePicker?(options: { multiple: boolean; types: Kinds }): Promise<FileOnDisk[]>;
  showSaveFilePicker?(options: { suggestedName: string; types: Kinds }): Promise<FileOnDisk>;
};
const pickers = globalThis as Pickers;

export const canPick = (): boolean => pickers.showOpenFilePicker !== undefined;
export const canPickPlace = (): boolean => pickers.showSaveFilePicker !== undefined;

const TO_OPEN: Kinds = [
  {
    description: 'Design, with its meshes',
    accept: {
      'application/json': ['.json'],
      'model/stl': ['.stl'],
      'model/obj': ['.obj'],
      'model/gltf-binary': ['.glb'],
      // Of PLY no type is registered.
      'application/octet-stream': ['.ply'],
    },
  },
];

/** None where the user thought better of it. Only where `canPick`. */
export async function pickFiles(): Promise<Picked[]> {
  const handles = await unlessLeft(() => pickers.showOpenFilePicker!({ multiple: true, types: TO_OPEN }));
  return Promise.all((handles ?? []).map(async (handle) => ({ file: await handle.getFile(), handle })));
}

/** Null where the user thought better of it. Only where `canPickPlace`. */
export const pickPlace = (suggestedName: string, description: string, type: string, extension: string) =>
  unlessLeft(() =>
    pickers.showSaveFilePicker!({ suggestedName, types: [{ description, accept: { [type]: [extension] } }] }),
  );

async function unlessLeft<T>(ask: () => Promise<T>): Promise<T | null> {
  try {
    return await ask();
  } catch (error) {
    if (isSecondThought(error)) return null;
    throw error;
  }
}

type HandleItem = DataTransferItem & { getAsFileSystemHandle?(): Promise<(FileOnDisk & { kind: string }) | null> };

/** To be called while the drop is being told of: the browser forgets what was dropped right after. */
export function pickedFromDrop(items: DataTransferItemList | undefined): Promise<Picked[]> {
  const files = [...(items ?? [])].filter(({ kind }) => kind === 'file') as HandleItem[];
  const asked = files.map((item) => ({
    file: item.getAsFile(),
    handle: item.getAsFileSystemHandle?.().catch(() => null) ?? Promise.resolve(null),
  }));
  return Promise.all(
    asked.map(async ({ file, handle }): Promise<Picked[]> => {
      const found = await handle;
      return file ? [{ file, handle: found?.kind === 'file' ? found : null }] : [];
    }),
  ).then((picked) => picked.flat());
}
