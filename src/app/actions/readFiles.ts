/**
 * Files as the user hands them over → a design with its meshes, or a readable refusal. Knows names and bytes alone, so that
 * picking, dropping and examples share it; meshes are read by whoever is handed in, in a worker where there are such.
 */
import type { TriangleSoup } from '../../../geometry';
import { parseDesign } from '../../../shared/design/parse';
import type { Design } from '../../../shared/design/types';

export type NamedFile = { readonly name: string; readonly file: Blob };

export type Handed = {
  readonly design: { readonly design: Design; readonly fileName: string } | null;
  readonly meshes: ReadonlyMap<string, TriangleSoup>;
  /** Mesh files that the design names and that were not handed over. */
  readonly missing: readonly string[];
};

export const isDesignName = (name: string) => /\.json$/i.test(name);
export const isMeshName = (name: string) => /\.(stl|obj|ply|glb)$/i.test(name);

/** As a file picker takes it. */
export const MESH_TYPES = '.stl,.obj,.ply,.glb';

/**
 * @param readMesh may take its time; its error says what is wrong with the file
 * @throws DesignError for a design that breaks a rule, Error for files that are no use here
 */
export async function readFiles(
  files: readonly NamedFile[],
  readMesh: (file: NamedFile) => Promise<TriangleSoup>,
): Promise<Handed> {
  const stranger = files.find((f) => !isDesignName(f.name) && !isMeshName(f.name));
  if (stranger)
    throw new Error(`${stranger.name} is neither a design (.evenrun.json) nor a mesh (.stl, .obj, .ply or .glb).`);
  const designs = files.filter((f) => isDesignName(f.name));
  if (designs.length > 1)
    throw new Error(`One design at a time: ${designs.map((f) => f.name).join(' and ')} were given together.`);
  // First what is quickly refused.
  const [file] = designs;
  const design = file ? parseDesign(await textOf(file)) : null;

  const meshes = new Map<string, TriangleSoup>();
  for (const mesh of files.filter((f) => isMeshName(f.name))) meshes.set(mesh.name, await named(mesh, readMesh));

  if (!file || !design) return { design: null, meshes, missing: [] };
  const missing = meshFilesOf(design).filter((name) => !meshes.has(name));
  return { design: { design, fileName: file.name }, meshes, missing };
}

export function meshFilesOf(design: Design): string[] {
  const files = (design.surroundings ?? []).flatMap((s) => (s.shape === 'mesh' ? [s.file] : []));
  return [...new Set(files)];
}

async function textOf({ name, file }: NamedFile): Promise<string> {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(await file.arrayBuffer());
  } catch {
    throw new Error(`${name} is not text in UTF-8; save the design again as .evenrun.json.`);
  }
}

/** @throws Error that begins with the file's name */
async function named(mesh: NamedFile, readMesh: (file: NamedFile) => Promise<TriangleSoup>): Promise<TriangleSoup> {
  try {
    return await readMesh(mesh);
  } catch (error) {
    if (error instanceof Error && error.name === 'Cancelled') throw error;
    const said = error instanceof Error ? error.message : String(error);
    throw new Error(said.startsWith(mesh.name) ? said : `${mesh.name}: ${said}`);
  }
}
