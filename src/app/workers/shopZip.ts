/** The shop folder as one zip. Loaded on demand: most visits never export. */
import type { Meshes } from '../../../geometry';
import type { Design } from '../../../shared/design/types';

export async function shopZip(_design: Design, _meshes: Meshes): Promise<Uint8Array> {
  throw new Error('The shop folder cannot be written yet.');
}
