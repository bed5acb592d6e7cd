/** What is found about the space, in the words of the workbench: for paper, tables and the command line alike. */
import {
  type AccessEntry,
  type BareReason,
  type Header,
  placeOnRunner,
  type Reach,
  type RoomReport,
  type WrapPlan,
} from '../../../geometry';
import type { Display, Wrap } from '../../../shared/design/types';
import { lengthParts } from '../../../shared/units';

export const REACH_WORDS: Readonly<Record<Reach, string>> = {
  reachable: 'reachable',
  'before-wrapping': 'before wrapping only',
  'one-tool': 'with one tool only',
  blocked: 'blocked',
};

/** `1 of 14 blocked, 2 before wrapping only`, or that all are reachable. */
export function reachSummary(entries: readonly Pick<AccessEntry, 'reach'>[]): string {
  const told = (['blocked', 'before-wrapping'] as const).flatMap((reach) => {
    const count = entries.filter((e) => e.reach === reach).length;
    return count > 0 ? [{ count, words: REACH_WORDS[reach] }] : [];
  });
  const [first, second] = told;
  if (!first) return `all ${entries.length} reachable`;
  const head = `${first.count} of ${entries.length} ${first.words}`;
  return second ? `${head}, ${second.count} ${second.words}` : head;
}

/** A tube from its start, stretch by stretch: wrapped, or bare and why. Reasons whose stretches overlap share one. */
export type Stretch = { readonly from: number; readonly to: number; readonly bare: string | null };

export function stretchesOf({ possible, bare }: WrapPlan): Stretch[] {
  const runs: { from: number; to: number; reasons: Bare[] }[] = [];
  for (const reason of bare.toSorted((a, b) => a.from - b.from)) {
    const last = runs.at(-1);
    if (last && reason.from <= last.to) {
      last.to = Math.max(last.to, reason.to);
      last.reasons.push(reason);
    } else runs.push({ from: reason.from, to: reason.to, reasons: [reason] });
  }
  return [
    ...possible.map(([from, to]) => ({ from, to, bare: null })),
    ...runs.map(({ from, to, reasons }) => ({ from, to, bare: bareWords(reasons) })),
  ].sort((a, b) => a.from - b.from);
}

type Bare = WrapPlan['bare'][number];

/** `for f1 stud 3, egt 1; too narrow for the roll beside r3` */
function bareWords(reasons: readonly Bare[]): string {
  const of = (...kinds: readonly BareReason[]): string[] => [
    ...new Set(reasons.filter(({ why }) => kinds.includes(why)).map((r) => r.of)),
  ];
  const told = (head: string, between: string, names: readonly string[]): string[] => {
    const named = names.filter((name) => name !== '');
    return names.length === 0 ? [] : [named.length > 0 ? `${head}${between}${named.join(', ')}` : head];
  };
  return [
    ...told('for', ' ', of('fastener', 'service', 'sensor')),
    ...told('too narrow for the roll', ' beside ', of('narrow')),
    ...told('tubes run together', ': ', of('bundle')),
    ...told('as drawn', ': ', of('as-drawn')),
  ].join('; ');
}

/** What was not looked at must not be taken for free. */
export const unreadWords = (files: readonly string[]): string =>
  `Not measured against ${files.join(', ')}, which ${files.length > 1 ? 'have' : 'has'} not been read.`;

export const wrapWords = ({ layers }: Wrap, thickness: string): string =>
  `${thickness}${layers > 1 ? `, ${layers} layers` : ', 1 layer'}`;

/** `bend 2`: where on its tube a station lies; empty where the runner is not routed. */
export function placeWords(header: Header, id: string, station: number): string {
  const line = header.runners.find(({ runner }) => runner.id === id)?.centerline;
  return line ? placeOnRunner(line, station) : '';
}

/** `640.0 mm before its outlet`: how far along the flow a sensor stands from the collector it belongs to. */
export const collectorWords = (toCollector: number, length: (mm: number) => string): string =>
  toCollector < 0 ? `${length(-toCollector)} before its outlet` : `${length(toCollector)} past its inlets`;

/** `from the flange`, or from the collector that a runner starts at: where its stations count from. */
export function startWords({ runners }: Header, id: string): string {
  const from = runners.find(({ runner }) => runner.id === id)?.runner.from;
  return from && 'merge' in from ? `from ${from.merge}` : 'from the flange';
}

/** Along a tube for a rule or a tape: nobody reads them finer. */
export const tapeLength = (mm: number, display: Display): { number: string; unit: string } =>
  lengthParts(mm, display, display === 'in' ? 2 : 1);

export function tapeWords(mm: number, display: Display): string {
  const { number, unit } = tapeLength(mm, display);
  return `${number} ${unit}`;
}

/** What the rules hold nothing of and a builder must know before the first cut; empty where there is nothing. */
export function beforeCutting({ access, removal }: RoomReport): string[] {
  const unreached = (access?.entries ?? []).filter(({ reach }) => reach === 'blocked' || reach === 'before-wrapping');
  const stopped = (removal?.pieces ?? []).filter((piece) => piece.stopped !== null);
  return [
    ...(access && unreached.length > 0
      ? [`Fasteners and service points: ${reachSummary(access.entries)}. Which, and what helps: see Fitting.`]
      : []),
    ...stopped.map(({ message }) => message),
  ];
}
