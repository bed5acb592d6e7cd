/** Reads a mesh file and sorts its triangles for searching, away from the page. */
import { cropSoup, flatTreeOf, thinSoup } from '../../../geometry';
import { noteLines } from '../../formats/mesh/notes';
import { readMesh } from '../../formats/mesh/readMesh';
import { boxOf } from './facts';
import type { MeshReply, MeshWish, ReadMesh } from './messages';
import { shared, transfers } from './share';

/** Reading's part of the work where there is reading; sorting is the rest. */
const READING = 0.4;
/** Not more often than a picture is drawn, ms. */
const BETWEEN = 40;

let told = 0;
function tell(doing: string, part: number): void {
  const now = performance.now();
  if (now - told < BETWEEN) return;
  told = now;
  self.postMessage({ doing, part } satisfies MeshReply);
}

async function soupOf(wish: MeshWish): Promise<{ soup: Float32Array; notes: readonly string[] }> {
  if (wish.do === 'sort') return { soup: wish.soup, notes: [] };
  if (wish.do === 'read') {
    const bytes = new Uint8Array(await wish.file.arrayBuffer());
    const { soup, notes } = readMesh(wish.name, bytes, (part) => tell('Reading', READING * part));
    return { soup, notes: noteLines(notes) };
  }
  tell('Counting', 0);
  const { soup, crop, thin } = wish;
  const cropped = crop ? cropSoup(soup, crop[0], crop[1]) : soup;
  return { soup: thin > 0 ? thinSoup(cropped, thin) : cropped, notes: [] };
}

self.onmessage = async ({ data: wish }: MessageEvent<MeshWish>) => {
  try {
    const { soup, notes } = await soupOf(wish);
    const from = wish.do === 'read' ? READING : 0;
    const flat = shared(flatTreeOf(soup, (part) => tell('Sorting', from + (1 - from) * part)));
    const done: ReadMesh = { flat, box: boxOf(flat.soup), notes };
    self.postMessage({ done } satisfies MeshReply, { transfer: transfers(flat) });
  } catch (error) {
    self.postMessage({ failed: error instanceof Error ? error.message : String(error) } satisfies MeshReply);
  }
};
