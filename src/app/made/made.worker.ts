/**
 * Makes the parts of a header, in a worker of its own so that nothing else waits for it. Between two kinds of part it
 * listens: where a newer design has come, what is half made is dropped.
 */
import { type Header, headerParts, resolveHeader } from '../../../geometry';
import { share } from '../../../shared/share';
import type { MakeReply, MakeRequest } from './messages';
import { buffersOf, shownPart } from './shape';

class Superseded extends Error {}

let newest = 0;
/** Parts that did not change keep their identity from one request to the next, and so does what follows from them. */
let last: Header | null = null;

const say = (reply: MakeReply, transfer: Transferable[] = []) => self.postMessage(reply, { transfer });
/** Messages come in between two tasks only. */
const listen = () => new Promise((resolve) => setTimeout(resolve));

async function make({ number, design }: MakeRequest): Promise<void> {
  const header = resolveHeader(last ? share(last.design, design) : design, last ?? undefined);
  last = header;
  const made = await headerParts(header, async ({ what }) => {
    await listen();
    if (number !== newest) throw new Superseded();
    say({ number, doing: what });
  });
  const parts = made.parts.map(shownPart);
  say({ number, done: { ...made, parts } }, parts.flatMap(buffersOf) as ArrayBuffer[]);
}

self.onmessage = async ({ data }: MessageEvent<MakeRequest>) => {
  newest = data.number;
  try {
    await make(data);
  } catch (error) {
    if (error instanceof Superseded) return;
    say({ number: data.number, failed: error instanceof Error ? error.message : String(error) });
  }
};
