/**
 * `make DESIGN`: both ways of making its tubes side by side, every piece and bend row of the ways chosen, what to buy and how it is
 * cut. With `-o` the design is written with the way and the workshop that were asked for.
 */
import { resolve } from 'node:path';
import { resolveHeader } from '../../../geometry';
import { parseDesign } from '../../../shared/design/parse';
import type { Design } from '../../../shared/design/types';
import { writeDesign } from '../../../shared/design/write';
import { makingOf } from '../../shop/making/making';
import type { Way } from '../../shop/making/report';
import { withWay } from '../../shop/making/withWay';
import { insistWritable, writeWhole } from '../files';
import { FAILS, HOLDS, type Io, UnusableInput } from '../io';
import { printMaking } from '../print/making/making';
import { designAt, loadDesign, naming } from '../readDesign';

export type MakeArguments = {
  readonly way?: string;
  readonly tube?: string;
  readonly workshop?: string;
  readonly output?: string;
  readonly json?: boolean;
};

const WAYS: readonly Way[] = ['welded', 'bent'];

export async function makeCommand(path: string, options: MakeArguments, io: Io): Promise<number> {
  const output = options.output === undefined ? null : resolve(io.cwd, options.output);
  if (output) insistWritable(output);
  const { design: given } = loadDesign(path, io);
  const design = asAsked(given, options, io);
  const making = await makingOf(resolveHeader(design));
  if (output) writeWhole(output, writeDesign(design));
  const written = output ? { output: options.output } : {};
  io.out(
    options.json
      ? `${JSON.stringify({ ...making, ...written }, null, 2)}\n`
      : `${printMaking(design, making)}${output ? `\nWritten to ${options.output}\n` : ''}`,
  );
  return making.remarks.some(({ stops }) => stops) ? FAILS : HOLDS;
}

function asAsked(given: Design, { way, tube, workshop }: MakeArguments, io: Io): Design {
  let design = given;
  if (workshop !== undefined) {
    const path = resolve(io.cwd, workshop);
    const from = designAt(path).workshop;
    if (!from) throw new UnusableInput(`${path}: workshop: found nothing; allowed: a design that has a workshop`);
    // The shelf of one design may not fit another's rules: it is read as if it had been there.
    design = naming(path, () => parseDesign(writeDesign({ ...design, workshop: from })));
  }
  if (way === undefined && tube !== undefined)
    throw new UnusableInput(`--tube: found "${tube}" without a way; give --way too: ${WAYS.join(' or ')}`);
  if (way === undefined) return design;
  if (!isWay(way)) throw new UnusableInput(`--way: found "${way}"; allowed: ${WAYS.join(' or ')}`);
  const names = Object.keys(design.tooling);
  if (tube !== undefined && !names.includes(tube))
    throw new UnusableInput(`--tube: found "${tube}"; allowed: ${names.join(', ')}`);
  return withWay(design, tube === undefined ? names : [tube], way);
}

const isWay = (text: string): text is Way => WAYS.some((way) => way === text);
