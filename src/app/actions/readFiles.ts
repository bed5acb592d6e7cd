/**
 * Files as the user hands them over → a design with its meshes, or a readable refusal. Pure on bytes and names, so that
 * picking, dropping and examples share it.
 */
import type { TriangleSoup } from '../../../geometry';
import { parseDesign } from '../../../shared/design/parse';
import type { Design } from '../../../shared/design/types';

export type NamedBytes = { readonly name: string; readonly bytes: Uint8Array };

export type Handed = {
  readonly design: { readonly design: Design; readonly fileName: string } | null;
  readonly meshes: ReadonlyMap<string, TriangleSoup>;
  /** Mesh files that the design names and that were not handed over. */
  readonly missing: readonly string[];
};

const isDesign = (name: string) => /\.json$/i.test(name);
const isMesh = (name: string) => /\.(stl|obj|ply|glb)$/i.test(name);

/** @throws DesignError for a design that breaks a rule, Error for files that are no use here */
export async function readFiles(files: readonly NamedBytes[]): Promise<Handed> {
  const stranger = files.find((f) => !isDesign(f.name) && !isMesh(f.name));
  if (stranger)
    throw new Error(`${stranger.name} is neither a design (.evenrun.json) nor a mesh (.stl, .obj, .ply, .glb).`);
  const designs = files.filter((f) => isDesign(f.name));
  if (designs.length > 1)
    throw new Error(`One design at a time: ${designs.map((f) => f.name).join(' and ')} were given together.`);

  const meshes = new Map<string, TriangleSoup>();
  for (const { name, bytes } of files.filter((f) => isMesh(f.name))) meshes.set(name, await readMeshOf(name, bytes));

  const file = designs[0];
  if (!file) return { design: null, meshes, missing: [] };
  const design = parseDesign(decode(file));
  const missing = meshFilesOf(design).filter((name) => !meshes.has(name));
  return { design: { design, fileName: file.name }, meshes, missing };
}

export function meshFilesOf(design: Design): string[] {
  const files = (design.surroundings ?? []).flatMap((s) => (s.shape === 'mesh' ? [s.file] : []));
  return [...new Set(files)];
}

function decode({ name, bytes }: NamedBytes): string {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    throw new Error(`${name} is not text in UTF-8; save the design again as .evenrun.json.`);
  }
}

/** The readers are loaded when the first mesh comes. */
async function readMeshOf(name: string, bytes: Uint8Array): Promise<TriangleSoup> {
  const { readMesh } = await import('../../formats/mesh/readMesh');
  try {
    return readMesh(name, bytes).soup;
  } catch (error) {
    throw new Error(`${name}: ${error instanceof Error ? error.message : String(error)}`);
  }
}
