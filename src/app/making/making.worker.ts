/**
 * Finds out how the header's tubes are made, in a worker of its own: the solver of the cutting plans is loaded here alone. One
 * request, one answer; whoever has a newer design ends the whole worker.
 */
import { type Header, resolveHeader } from '../../../geometry';
import { share } from '../../../shared/share';
import { makingOf } from '../../shop/making/making';
import type { MakingReply, MakingRequest } from './messages';

/** Parts that did not change keep their identity from one request to the next, and so does what follows from them. */
let last: Header | null = null;

async function answer({ number, design }: MakingRequest): Promise<MakingReply> {
  last = resolveHeader(last ? share(last.design, design) : design, last ?? undefined);
  return { number, done: await makingOf(last) };
}

self.onmessage = async ({ data }: MessageEvent<MakingRequest>) => {
  try {
    self.postMessage(await answer(data));
  } catch (error) {
    const failed = error instanceof Error ? error.message : String(error);
    self.postMessage({ number: data.number, failed } satisfies MakingReply);
  }
};
