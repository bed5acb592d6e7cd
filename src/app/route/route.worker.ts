/** One of the workers that lay a header. */
import type { RouteRequest } from './messages';
import { roundRunner } from './roundRunner';

const run = roundRunner(
  (reply) => self.postMessage(reply),
  () => performance.now(),
);

self.onmessage = ({ data }: MessageEvent<RouteRequest>) => run(data);
