/**
 * The kernel off the main thread: one request, one reply, in order; a long job tells meanwhile what it is at. Whoever needs to
 * cancel ends the whole worker.
 */
import {
  areaSchedule,
  balance,
  check,
  compareDesigns,
  draftHeader,
  lengthWindows,
  type Meshes,
  resolveHeader,
  settleEdit,
} from '../../../geometry';
import { createUnpacker } from '../meshes/packed';
import type { Progress, Reply, Request } from './messages';

let meshes: Meshes = new Map();
const unpacked = createUnpacker();

const tellProgress = (doing: string) => self.postMessage({ doing } satisfies Progress);

async function answer(request: Request): Promise<Reply> {
  if (request.meshes) meshes = request.meshes;
  switch (request.job) {
    case 'check':
      return { done: check(request.design, meshes) };
    case 'windows':
      return { done: lengthWindows(request.design, meshes) };
    case 'balance':
      return { done: balance(request.design, meshes) };
    case 'settle':
      return { done: settleEdit(request.design, meshes) };
    case 'compare':
      return { done: compareDesigns(request.before, request.after, request.beside) };
    case 'draft':
      return { done: draftHeader(request.form) };
    case 'areas':
      return { done: await areaSchedule(resolveHeader(request.design), request.port) };
    case 'shop': {
      const { shopZip } = await import('./shopZip');
      return { done: await shopZip(request.design, meshes, request.folder, tellProgress, request.onPaper) };
    }
  }
}

self.onmessage = async ({ data }: MessageEvent<Request>) => {
  try {
    self.postMessage(await answer(unpacked(data)));
  } catch (error) {
    const reply: Reply = { failed: error instanceof Error ? error.message : String(error) };
    self.postMessage(reply);
  }
};
