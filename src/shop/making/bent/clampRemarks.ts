/** What is said of a tube that cannot be clamped from either end: which straights are short, by how much, what would mend it. mm */
import { list } from '../../list';
import type { Remark } from '../report';
import type { BenderSettings } from './bender';
import { type Clamping, type Grips, isShort } from './clamping';
import type { Say } from './words';

type Stuck = {
  readonly runner: string;
  /** `primary`: the runner's entry of `tooling`. */
  readonly tube: string;
  readonly id: string;
  readonly firstBend: number;
  readonly grips: Grips;
  readonly clamping: Clamping;
  readonly bender: Pick<BenderSettings, 'clamp' | 'tail'>;
};

export function clampRemarks(stuck: Stuck, say: Say): Remark[] {
  const { runner, tube, grips, clamping, bender } = stuck;
  if (clamping.fromStart || clamping.fromEnd) return [];
  const { start, end, between } = grips;
  const longest = Math.max(start, end, ...between);
  if (isShort(longest, bender.clamp))
    return [{ where: `tooling/${tube}/bender/clamp`, message: noneLongEnough(stuck, longest, say), stops: true }];
  const where = `runners/${runner}`;
  const messages = clamping.short.length > 0 ? [shortBetween(stuck, say)] : [];
  if (messages.length === 0 || clamping.offered.length === 0) messages.push(...shortAtEnds(stuck, say));
  return messages.map((message) => ({ where, message, stops: true }));
}

const bendsBefore = ({ firstBend, clamping }: Stuck): number[] => clamping.offered.map((bend) => bend + firstBend - 1);

function noneLongEnough(stuck: Stuck, longest: number, say: Say): string {
  const { id, firstBend, clamping, bender } = stuck;
  const { sawn } = sawnOn(stuck, say);
  const splits = bendWords(clamping.short.map((bend) => bend + firstBend - 1));
  const remedies = [
    'use a die whose clamp needs no more than that',
    `make its straights ${say(bender.clamp - longest)} longer`,
    clamping.short.length === 0
      ? `saw on ${list(sawn)}`
      : `split it before ${splits}${sawn.length > 0 ? ` and saw on ${list(sawn)}` : ''}`,
    'or weld it up from stock bends',
  ];
  const found = `The clamp grips ${say(bender.clamp)} and the longest straight of ${id}, trims included, is ${say(longest)}`;
  return `${found}: ${remedies.join(', ')}.`;
}

function shortBetween(stuck: Stuck, say: Say): string {
  const { id, firstBend, grips, clamping, bender } = stuck;
  const short = clamping.short.map((bend) => ({ bend: bend + firstBend - 1, straight: grips.between[bend - 2]! }));
  const found = list(short.map(({ bend, straight }) => `${say(straight)} between bends ${bend - 1} and ${bend}`));
  const worst = bender.clamp - Math.min(...short.map(({ straight }) => straight));
  return (
    `${id} has ${found}, and the clamp needs ${say(bender.clamp)}, from whichever end it is bent: ` +
    `split it before ${bendWords(short.map(({ bend }) => bend))}, or make the straight${short.length > 1 ? 's' : ''} there up to ${say(worst)} longer.`
  );
}

function shortAtEnds(stuck: Stuck, say: Say): string[] {
  const { id, grips, clamping, bender } = stuck;
  const { sawn, from } = sawnOn(stuck, say);
  if (sawn.length === 0) return [];
  const offered = clamping.short.length > 0 ? [] : bendsBefore(stuck);
  const split = offered.length > 0 ? `, or split it before ${bendWords(offered)}` : '';
  return [
    `${id} has ${say(grips.start)} of straight before its first bend and ${say(grips.end)} after its last, trims included; ` +
      `the clamp needs ${say(bender.clamp)}, the tail ${say(bender.tail)}: saw on ${list(sawn)}${from}${split}.`,
  ];
}

/** The way round that needs less sawn on; where it must be split anyway each end may have either, and so needs the less of the two. */
function sawnOn({ tube, grips, clamping, bender }: Stuck, say: Say): { sawn: string[]; from: string } {
  const { clamp, tail } = bender;
  const least = Math.min(clamp, tail);
  const more = (needed: number, there: number): number => (isShort(there, needed) ? needed - there : 0);
  const ways =
    clamping.short.length > 0
      ? [{ from: '', start: more(least, grips.start), last: more(least, grips.end) }]
      : [
          { from: ', and bend it from its start', start: more(clamp, grips.start), last: more(tail, grips.end) },
          { from: ', and bend it from its other end', start: more(tail, grips.start), last: more(clamp, grips.end) },
        ];
  const best = ways.reduce((a, b) => (b.start + b.last < a.start + a.last ? b : a));
  const sawn = [
    best.start > 0 ? `${say(best.start)} more at its start (tooling/${tube}/trimStart)` : '',
    best.last > 0 ? `${say(best.last)} more at its other end (tooling/${tube}/trimEnd)` : '',
  ].filter(Boolean);
  return { sawn, from: best.from };
}

const bendWords = (bends: readonly number[]): string => `bend${bends.length > 1 ? 's' : ''} ${list(bends.map(String))}`;
