/** What took work is not written over by an answer of another kind: a design, or a study that was followed for hours. */
import { existsSync } from 'node:fs';
import { MAX_STUDY_BYTES } from '../../pulse/forecast/studyFile';
import { readBytes } from '../files';
import { UnusableInput } from '../io';
import type { Output } from './options';

/** Where the program's own documents have their format. */
const HEAD = 4096;

/** @param output a `.json` that holds neither @param isStudy it is a study that begins anew */
export function insistKept(output: Output | undefined, isStudy = false): void {
  if (!output || !existsSync(output.path)) return;
  const head = new TextDecoder().decode(readBytes(output.path, MAX_STUDY_BYTES).subarray(0, HEAD));
  const format = /"format"\s*:\s*"evenrun-(design|study)"/.exec(head)?.[1];
  if (format === undefined) return;
  const goOn =
    format === 'study' && isStudy ? 'add --resume to go on with it, or choose another name' : 'choose another name';
  throw new UnusableInput(`-o, --output: ${output.name} holds a ${format}, which would be lost; ${goOn}`);
}
