/** The solver that follows a hand, off the main thread: one gesture at a time, one reply for each ask. */
import { type Follower, follower, type Header, type Meshes, resolveHeader } from '../../../geometry';
import type { Design } from '../../../shared/design/types';
import { share } from '../../../shared/share';
import { createUnpacker } from '../meshes/packed';
import type { HandReply, HandRequest } from './messages';
import { practice } from './practice';

let meshes: Meshes = new Map();
const unpacked = createUnpacker();
let follows: Follower | null = null;
/** As it was last known: what comes is a copy, and what is the same in both has been measured. */
let known: Header | undefined;
let practising: Generator<void> | null = null;

/** A hand that takes hold in between ends it. */
function practise(): void {
  try {
    if (practising && !practising.next().done) setTimeout(practise);
  } catch {
    // Whatever is wrong with the header, the hand that takes hold of it is told.
  }
}

function recognise(design: Design): Header {
  known = resolveHeader(known ? share(known.design, design) : design, known);
  return known;
}

function answer(request: Exclude<HandRequest, { do: 'practise' }>): HandReply | null {
  const { hand } = request;
  const began = performance.now();
  practising = null;
  if (request.do === 'hold') {
    if (request.meshes) meshes = request.meshes;
    const from = recognise(request.from);
    follows = follower(from.design, meshes, request.held, from);
    return null;
  }
  if (!follows) return { hand, failed: 'Nothing is held.' };
  const found = request.do === 'ask' ? follows.ask(request.asked) : follows.further();
  return { hand, answer: found, spent: performance.now() - began };
}

self.onmessage = ({ data: sent }: MessageEvent<HandRequest>) => {
  const data = unpacked(sent);
  if (data.do === 'practise') {
    meshes = data.meshes;
    practising = practice(recognise(data.design), meshes);
    practise();
    return;
  }
  try {
    const reply = answer(data);
    if (reply) self.postMessage(reply);
  } catch (error) {
    const reply: HandReply = { hand: data.hand, failed: error instanceof Error ? error.message : String(error) };
    self.postMessage(reply);
  }
};
