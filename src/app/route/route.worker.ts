/** One of the workers that lay a header. */
import { createUnpacker } from '../meshes/packed';
import type { RouteRequest } from './messages';
import { roundRunner } from './roundRunner';

const run = roundRunner(
  (reply) => self.postMessage(reply),
  () => performance.now(),
);

const unpacked = createUnpacker();

self.onmessage = ({ data }: MessageEvent<RouteRequest>) => run(unpacked(data));
