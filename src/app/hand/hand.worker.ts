/** The solver that follows a hand, off the main thread: one gesture at a time, one reply for each ask. */
import { type Follower, follower, type Meshes } from '../../../geometry';
import type { HandReply, HandRequest } from './messages';

let meshes: Meshes = new Map();
let follows: Follower | null = null;

function answer(request: HandRequest): HandReply | null {
  const { hand } = request;
  const began = performance.now();
  if (request.do === 'hold') {
    if (request.meshes) meshes = request.meshes;
    follows = follower(request.from, meshes, request.held);
    return null;
  }
  if (!follows) return { hand, failed: 'Nothing is held.' };
  const found = request.do === 'ask' ? follows.ask(request.asked) : follows.further();
  return { hand, answer: found, spent: performance.now() - began };
}

self.onmessage = ({ data }: MessageEvent<HandRequest>) => {
  try {
    const reply = answer(data);
    if (reply) self.postMessage(reply);
  } catch (error) {
    const reply: HandReply = { hand: data.hand, failed: error instanceof Error ? error.message : String(error) };
    self.postMessage(reply);
  }
};
