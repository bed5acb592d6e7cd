/** One of the workers that lay a header: a round at a time, every layout told as soon as it is found. */
import { type Router, router } from '../../../geometry';
import type { RouteReply, RouteRequest } from './messages';

let lays: Router | null = null;

const post = (reply: RouteReply): void => self.postMessage(reply);

function answer(request: RouteRequest): void {
  if (request.do === 'lay') {
    lays = router(request.design, request.meshes, request.options);
    return;
  }
  if (!lays) throw new Error('Nothing is to be laid yet.');
  const { n } = request;
  const ends = performance.now() + request.ms;
  let cut = false;
  const stopped = (): boolean => {
    cut ||= performance.now() >= ends;
    return cut;
  };
  const round = lays.round(n, (seen) => post({ n, seen }), stopped);
  post({ n, round, cut });
}

self.onmessage = ({ data }: MessageEvent<RouteRequest>) => {
  try {
    answer(data);
  } catch (error) {
    post({ failed: error instanceof Error ? error.message : String(error) });
  }
};
