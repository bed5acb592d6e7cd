/** What is said of a place that tools reach or do not: who is in the way, by how much, and what would mend it. Lengths come in mm and are said in the design's unit. */
import { placeOnRunner, sayIn } from '../check/words';
import type { Header } from '../header/resolve';
import type { Tried } from './accessReport';
import type { Culprit } from './judge';
import type { Place } from './place';
import type { Reach } from './report';
import { kindsFor } from './ways';
import type { Cuts } from './wrapCut';

export function messageFor(
  header: Header,
  place: Place,
  reach: Reach,
  tries: readonly Tried[],
  best: Tried | null,
  bare: () => Cuts,
): string {
  if (!best) {
    const kinds = kindsFor(place).map((kind) => kind.replaceAll('-', ' '));
    return `${place.id}: none of the tools at hand is for it. Take one to hand that is: ${kinds.join(', ')}.`;
  }
  const working = tries.filter((t) => t.wrapped);
  if (reach === 'reachable') return `${place.id} is reached ${withTools(working)}.`;
  if (reach === 'one-tool') {
    const other = tries.filter((t) => !t.wrapped).reduce((p, q) => (q.lack < p.lack ? q : p));
    return `${place.id} is reached ${withTools([best])} only: ${stopped(header, place, other)}.`;
  }
  const { remedy } = fault(header, place, best);
  if (reach === 'before-wrapping')
    return `${place.id} is reached before wrapping only: wrapped, ${stopped(header, place, best)}. ${remedies(bareWords(header, bare()), remedy)}`;
  return `${place.id} cannot be reached: ${stopped(header, place, best)}. ${remedy}`;
}

const stopped = (header: Header, place: Place, tried: Tried): string => fault(header, place, tried).what;

function fault(header: Header, place: Place, { name, way, lack, culprits }: Tried): { what: string; remedy: string } {
  const say = sayIn(header.design.display);
  if (way.unfit !== null)
    return { what: `${a(name)} does not fit, as ${way.unfit}`, remedy: 'Use a longer socket or a shorter stud.' };
  const [first, second] = culprits;
  if (!first) return { what: `there is no room for ${a(name)}`, remedy: 'Make room for it.' };
  const depth = tenths(Math.min(lack, first.depth));
  const and = second ? `, with ${nameOf(header, second)},` : '';
  const what = `${nameOf(header, first)}${and} is in the way of ${a(name)} by ${say(depth)}`;
  return { what, remedy: remedyFor(header, place, first, depth) };
}

const remedies = (wrap: string, other: string): string =>
  wrap === '' ? other : sentence(`${wrap}, or ${other[0]!.toLowerCase()}${other.slice(1)}`);
const sentence = (text: string): string => `${text[0]!.toUpperCase()}${text.slice(1)}`;

/** Every stretch that must be left bare. */
function bareWords(header: Header, cuts: Cuts): string {
  const say = sayIn(header.design.display);
  const parts = [...cuts].flatMap(([id, spans]) => {
    const length = header.runners.find((r) => r.runner.id === id)?.centerline?.length ?? 0;
    return spans.map(([from, to]) => {
      if (from <= 0) return `begin the wrap of ${id} at ${say(to)}`;
      return to >= length
        ? `end the wrap of ${id} at ${say(from)}`
        : `leave ${id} bare from ${say(from)} to ${say(to)}`;
    });
  });
  if (parts.length === 0) return '';
  const all = listed(parts);
  return all;
}

/** Upward, so that moving by what is said is enough. */
const tenths = (x: number): number => Math.ceil(x * 10 - 1e-9) / 10;

/** A tube's straight at its port cannot be moved: the port says where it lies. */
const FIXED = 'straight 1';

function remedyFor(header: Header, place: Place, { id, station }: Culprit, depth: number): string {
  const say = sayIn(header.design.display);
  const r = station === null ? undefined : header.runners.find((o) => o.runner.id === id);
  const line = r?.centerline;
  if (line && station !== null && 'port' in r.runner.from && placeOnRunner(line, station) === FIXED)
    return `Move ${place.kind === 'fastener' ? 'the fastener' : place.id} ${say(depth)} away from the straight of ${id} at its port.`;
  if (line && station !== null) return `Move ${id} ${say(depth)} away at its ${placeOnRunner(line, station)}.`;
  if (header.merges.has(id)) return `Move the collector ${say(depth)} out of its way.`;
  return `Make ${say(depth)} more room there, or move the fastener.`;
}

function nameOf(header: Header, { id }: Culprit): string {
  if (header.runners.some((r) => r.runner.id === id)) return `runner ${id}`;
  if (header.merges.has(id)) return `collector ${id}`;
  if (header.design.flanges?.some((f) => f.id === id)) return `flange ${id}`;
  return header.surroundings.some((s) => s.id === id) ? `the ${id}` : id;
}

/** `with a 13 mm socket and a 13 mm deep socket`, `by hand`. */
function withTools(tools: readonly Tried[]): string {
  const held = tools.filter(({ kind }) => kind !== 'hand').map(({ name }) => a(name));
  return [
    ...(held.length > 0 ? [`with ${listed(held)}`] : []),
    ...(held.length < tools.length ? ['by hand'] : []),
  ].join(' and ');
}

const a = (name: string): string => `${/^(8|11|18)\b/.test(name) ? 'an' : 'a'} ${name}`;

const listed = (names: readonly string[]): string =>
  names.length < 2 ? names.join('') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;
