/**
 * Looks into the room round a header: one question, one answer, in order. Whoever needs to cancel ends the whole worker. Parts
 * that did not change keep their identity from one design to the next, and so does what was found of them.
 */
import {
  accessReport,
  gapReport,
  type Header,
  type Meshes,
  removalReport,
  resolveHeader,
  sensorReport,
} from '../../../geometry';
import type { Design } from '../../../shared/design/types';
import { share } from '../../../shared/share';
import { createUnpacker } from '../meshes/packed';
import type { Question, RoomAnswers, RoomReply, RoomRequest } from './messages';

let meshes: Meshes = new Map();
let last: Header | null = null;
const unpacked = createUnpacker();

function recognise(design: Design): Header {
  last = resolveHeader(last ? share(last.design, design) : design, last ?? undefined);
  return last;
}

const ANSWERS: { readonly [Q in Question]: (header: Header) => RoomAnswers[Q] } = {
  gaps: (header) => gapReport(header, meshes),
  access: (header) => accessReport(header, meshes),
  sensors: (header) => sensorReport(header, meshes),
  removal: (header) => removalReport(header, meshes),
};

function answer({ question, design, meshes: given }: RoomRequest): RoomReply {
  if (given) meshes = given;
  const began = performance.now();
  const done = ANSWERS[question](recognise(design));
  return { question, done, spent: performance.now() - began };
}

self.onmessage = ({ data }: MessageEvent<RoomRequest>) => {
  try {
    self.postMessage(answer(unpacked(data)));
  } catch (error) {
    const failed = error instanceof Error ? error.message : String(error);
    self.postMessage({ question: data.question, failed } satisfies RoomReply);
  }
};
