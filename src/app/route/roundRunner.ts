/** What a worker does that lays a header: a round at a time, every layout told as soon as it is found. No thread of its own. */
import { type Router, router } from '../../../geometry';
import type { RouteReply, RouteRequest } from './messages';

type Lays = Pick<Router, 'round'>;

/**
 * @param now the clock, ms
 * @param makeRouter replaced in tests
 */
export function roundRunner(
  post: (reply: RouteReply) => void,
  now: () => number,
  makeRouter: (...asked: Parameters<typeof router>) => Lays = router,
): (request: RouteRequest) => void {
  let lays: Lays | null = null;

  function answer(request: RouteRequest): void {
    if (request.do === 'lay') {
      lays = makeRouter(request.design, request.meshes, request.options);
      return;
    }
    if (!lays) throw new Error('Nothing is to be laid yet.');
    const { n } = request;
    const ends = now() + request.ms;
    let cut = false;
    const stopped = (): boolean => {
      cut ||= now() >= ends;
      return cut;
    };
    const round = lays.round(n, (seen) => post({ n, seen }), stopped);
    post({ n, round, cut });
  }

  return (request) => {
    try {
      answer(request);
    } catch (error) {
      post({ failed: error instanceof Error ? error.message : String(error) });
    }
  };
}
