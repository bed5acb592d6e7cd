/**
 * Which joint to leave loose where a header does not come off: every single one is tried, collectors slipped onto their inlets and
 * outlets slipped or flanged onto what follows, then two at a time; each is taken apart as `comeOff` does, so that what is said
 * to help has been tried. mm, design frame.
 */
import { calledA, type Say } from '../check/words';
import type { Bay, Undone, Wish } from './comeOff';
import { comeOff, listed, nameOf } from './comeOff';
import type { Loose } from './pieces';
import type { JointAdvice } from './report';
import { stoppedWords, wayWords } from './words';

/** Pairs are many and each takes as long as a header: the first so many are tried. */
const MOST_PAIRS = 12;

export function jointAdvice(bay: Bay, wish: Wish, say: Say): JointAdvice[] {
  const singles = candidates(bay);
  const tried = singles.map((l) => ({ loose: [l], undone: comeOff(bay, [l], wish, false) }));
  const advice = tried.map(({ loose, undone }) => adviceOf(loose, undone, say));
  if (advice.some((a) => a.helps)) return sorted(advice);
  const pairs = singles
    .flatMap((a, i) => singles.slice(i + 1).map((b) => [a, b]))
    .filter(([a, b]) => a!.id !== b!.id || a!.at !== b!.at)
    .slice(0, MOST_PAIRS);
  for (const loose of pairs) {
    const found = adviceOf(loose, comeOff(bay, loose, wish, false), say);
    if (found.helps) return [found, ...advice];
  }
  return advice;
}

const sorted = (advice: readonly JointAdvice[]): JointAdvice[] =>
  [...advice].sort((a, b) => Number(b.helps) - Number(a.helps));

/** A welded collector as a slip joint; the outlet of one that is followed as either. */
function candidates({ header }: Bay): Loose[] {
  const laid = header.runners.filter((r) => r.centerline);
  return [...header.merges.values()].flatMap(({ merge: { id, outletJoint = 'weld' } }): Loose[] => {
    const entered = laid.some((r) => r.runner.to.merge === id);
    const followed = laid.some(({ runner: { from } }) => 'merge' in from && from.merge === id);
    return [
      ...(entered ? [{ at: 'inlets', id, joint: 'slip' } as const] : []),
      ...(followed && outletJoint === 'weld'
        ? [{ at: 'outlet', id, joint: 'slip' } as const, { at: 'outlet', id, joint: 'flange' } as const]
        : []),
    ];
  });
}

const whereOf = ({ at, id }: Loose): string =>
  at === 'end' ? `runners/${id}/end` : `merges/${id}/${at === 'outlet' ? 'outletJoint' : 'inlets'}`;

const jointWords = ({ at, id, joint }: Loose): string =>
  at === 'inlets'
    ? `${calledA('collector', id)} as a slip joint on its inlets`
    : `the outlet of ${calledA('collector', id)} as a ${joint === 'slip' ? 'slip joint' : 'flange'}`;

function adviceOf(loose: readonly Loose[], undone: Undone, say: Say): JointAdvice {
  const [first, second] = loose;
  const { pieces, order, assembly } = undone;
  const helps = order.length === assembly.pieces.length;
  const what = listed(loose.map(jointWords));
  const message = helps
    ? `Leave ${what}; then it comes off: first ${order.map((k) => stepWords(undone, k, say)).join('; then ')}.`
    : `Leaving ${what} does not help: ${stuckWords(
        first!,
        pieces.filter((_, k) => !order.includes(k)),
        say,
      )}.`;
  return { where: whereOf(first!), joint: first!.joint, ...(second && { also: whereOf(second) }), helps, message };
}

function stepWords({ pieces }: Undone, k: number, say: Say): string {
  const taken = pieces[k]!;
  const { members, slide } = taken;
  const off = members.flanges.length > 0 ? 'off the head' : 'off its joint';
  const drawn = slide.ok && slide.axis ? `${say(Math.ceil(slide.far))} ${off} and ` : '';
  return `${nameOf(members)}, ${drawn}${wayWords(taken)}`;
}

/** Of the pieces that stay, the one that the joint was to free tells most. */
function stuckWords({ at, id }: Loose, stuck: Undone['pieces'], say: Say): string {
  const one = stuck.find(({ members }) => at === 'inlets' && members.merges.includes(id)) ?? stuck[0];
  return one ? `${nameOf(one.members)} ${stoppedWords(one, say)}` : 'nothing comes off';
}
