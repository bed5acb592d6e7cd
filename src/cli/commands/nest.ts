/** `nest LIST --bar … `: which pieces come out of which bar, so that least is bought, and the proof that none is better. */
import { resolve } from 'node:path';
import type { Display } from '../../../shared/design/types';
import { WORKSHOP_DEFAULTS } from '../../../shared/stock/workshop';
import { formatLength, parseLength } from '../../../shared/units';
import { type BarStock, type CutPiece, cutBars } from '../../shop/nest/bars';
import { SECONDS } from '../../shop/nest/cutAll';
import { numberArgument } from '../arguments';
import { readText } from '../files';
import { FAILS, HOLDS, type Io, UnusableInput } from '../io';
import { barsOf, piecesOf } from '../nestList';
import { printNest } from '../print/nest';

export type NestArguments = {
  readonly bar?: readonly string[];
  readonly kerf?: string;
  readonly endTrim?: string;
  readonly unit?: string;
  readonly seconds?: string;
  readonly json?: boolean;
};

const MOST_BYTES = 4_000_000;
const LONGEST_SEARCH = 3600;
/** EN 10296-2: stock lengths are 6 m. */
const DEFAULT_BAR = '6000 mm';

export async function nestCommand(list: string, options: NestArguments, io: Io): Promise<number> {
  const display = displayOf(options.unit);
  const kerf = amount('--kerf', options.kerf, WORKSHOP_DEFAULTS.kerf, display);
  const endTrim = amount('--end-trim', options.endTrim, WORKSHOP_DEFAULTS.endTrim, display);
  const seconds = secondsOf(options.seconds);
  const stock = barsOf(options.bar ?? [DEFAULT_BAR], display);
  const pieces = piecesOf(readText(resolve(io.cwd, list), MOST_BYTES), list, display);
  insistFitting(pieces, stock, kerf, endTrim, list, display);
  const problem = { pieces, stock, kerf, endTrim, seconds };
  const cuts = await cutBars(problem);
  if (options.json) io.out(`${JSON.stringify({ kerf, endTrim, bars: stock, pieces, ...cuts }, null, 2)}\n`);
  else io.out(printNest(problem, cuts, display));
  return cuts.over.length > 0 ? FAILS : HOLDS;
}

function insistFitting(
  pieces: readonly CutPiece[],
  stock: readonly BarStock[],
  kerf: number,
  endTrim: number,
  list: string,
  display: Display,
): void {
  const longest = Math.max(...stock.map(({ length }) => length));
  const say = (mm: number) => formatLength(mm, display);
  const line = ({ id }: CutPiece) => `${list}, line ${id.split('-')[0]}`;
  if (longest <= 2 * endTrim)
    throw new UnusableInput(
      `--end-trim: ${say(endTrim)} off both ends leaves nothing of a bar of ${say(longest)}; give less, or a longer --bar`,
    );
  const tooLong = pieces.find(({ length }) => length > longest - 2 * endTrim + 1e-6);
  if (tooLong)
    throw new UnusableInput(
      `${line(tooLong)}: ${say(tooLong.length)} is ${say(tooLong.length - longest + 2 * endTrim)} more than the longest bar gives, ${say(longest - 2 * endTrim)} of ${say(longest)}; give a --bar of ${say(tooLong.length + 2 * endTrim)}, or split the piece`,
    );
  const thin = pieces.find(({ length }) => length < kerf);
  if (thin)
    throw new UnusableInput(
      `${line(thin)}: ${say(thin.length)} is less than the kerf of ${say(kerf)}: no such piece survives the saw; give a thinner --kerf`,
    );
}

function amount(option: string, text: string | undefined, usual: number, display: Display): number {
  if (text === undefined) return usual;
  const answer = parseLength(text, display);
  if (!answer.ok) throw new UnusableInput(`${option}: found "${text}": ${answer.problem}`);
  if (answer.mm >= 0) return answer.mm;
  throw new UnusableInput(`${option}: found "${text}"; allowed: 0 or more`);
}

function secondsOf(text: string | undefined): number {
  if (text === undefined) return SECONDS;
  const seconds = numberArgument('--seconds', text);
  if (seconds > 0 && seconds <= LONGEST_SEARCH) return seconds;
  throw new UnusableInput(`--seconds: found "${text}"; allowed: more than 0, at most ${LONGEST_SEARCH}`);
}

function displayOf(text = 'mm'): Display {
  if (text === 'mm' || text === 'in') return text;
  throw new UnusableInput(`--unit: found "${text}"; allowed: mm, in`);
}
