/**
 * One job on a mesh in a worker of its own, so that cancelling is ending the worker. Its answer's triangles are known here with
 * their hierarchy and box.
 */
import { adoptTree, type TriangleSoup } from '../../../geometry';
import { Cancelled, type Task } from '../workers/task';
import { knowBox } from './facts';
import type { MeshReply, MeshWish, ReadMesh } from './messages';

export type Taken = Omit<ReadMesh, 'flat'> & { readonly soup: TriangleSoup };
export type MeshProgress = { readonly doing: string; readonly part: number };

type WorkerLike = Pick<Worker, 'postMessage' | 'terminate' | 'onmessage' | 'onerror'>;

const newMeshWorker = (): Worker =>
  new Worker(new URL('./mesh.worker.ts', import.meta.url), { type: 'module', name: 'mesh' });

/** @param makeWorker replaced in tests */
export function startMeshTask(
  wish: MeshWish,
  onProgress: (progress: MeshProgress) => void = () => {},
  makeWorker: () => WorkerLike = newMeshWorker,
): Task<Taken> {
  const worker = makeWorker();
  let cancel = () => {};
  const result = new Promise<ReadMesh>((resolve, reject) => {
    cancel = () => reject(new Cancelled());
    worker.onerror = (event) =>
      reject(
        new Error(event.message || 'Reading stopped: this browser may have no memory left for a mesh of this size.'),
      );
    worker.onmessage = ({ data }: MessageEvent<MeshReply>) => {
      if ('doing' in data) onProgress(data);
      else if ('done' in data) resolve(data.done);
      else reject(new Error(data.failed));
    };
    // What is only on its way through is handed over, not copied.
    const moves = wish.do === 'sort' && wish.soup.buffer instanceof ArrayBuffer ? [wish.soup.buffer] : [];
    worker.postMessage(wish, { transfer: moves });
  })
    .then(taken)
    .finally(() => worker.terminate());
  return { result, cancel: () => cancel() };
}

function taken({ flat, box, notes }: ReadMesh): Taken {
  const soup = adoptTree(flat);
  knowBox(soup, box);
  return { soup, box, notes };
}
