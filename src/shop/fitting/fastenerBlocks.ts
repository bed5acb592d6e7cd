/**
 * Fasteners in an order to fit them, numbered as on the flange's drawing, each with its tool and when that reaches it; then what
 * else must stay reachable. From the middle of a flange outward is common practice; which to start first follows from reach.
 */
import type { AccessEntry, AccessReport, Reach } from '../../../geometry';
import type { Design, Flange } from '../../../shared/design/types';
import type { Vec3 } from '../../../shared/vec3';
import type { Block } from '../sheet/flow';
import { REACH_WORDS, unreadWords } from './words';

type Bolted = { readonly entry: AccessEntry; readonly flange: Flange; readonly index: number };

export function fastenerBlocks(design: Design, { entries, unread }: AccessReport): Block[] {
  const bolted = entries.flatMap((entry) => boltedOf(design, entry));
  const service = entries.filter(({ kind }) => kind === 'service');
  const flanges = [...new Set(bolted.map(({ flange }) => flange))];
  const ordered = flanges.flatMap((flange) => middleOutward(bolted.filter((b) => b.flange === flange)));
  const hard = ordered.filter(({ entry }) => entry.reach !== 'reachable');
  const rows = ordered.map(({ entry, flange, index }, i) => {
    const { kind, thread } = flange.fasteners![index]!;
    return [String(i + 1), flange.id, String(index + 1), `${kind} ${thread}`, entry.best?.name ?? '', stateOf(entry)];
  });
  return [
    ...(rows.length > 0
      ? [
          { kind: 'heading', words: 'Fasteners' } as const,
          { kind: 'words', words: orderWords(ordered, flanges.length > 1) } as const,
          { kind: 'table', columns: FASTENER_COLUMNS, rows } as const,
          ...hard.map(({ entry }) => ({ kind: 'words', words: entry.message }) as const),
          ...(unread ? [{ kind: 'words', words: unreadWords(unread) } as const] : []),
        ]
      : []),
    ...(service.length > 0
      ? [
          { kind: 'heading', words: 'What must stay reachable' } as const,
          {
            kind: 'table',
            columns: SERVICE_COLUMNS,
            rows: service.map((e) => [e.id, e.best?.name ?? 'by hand', stateOf(e)]),
          } as const,
          ...service
            .filter(({ reach }) => reach !== 'reachable')
            .map(({ message }) => ({ kind: 'words', words: message }) as const),
        ]
      : []),
  ];
}

const FASTENER_COLUMNS = [
  { head: 'tighten', share: 16, bold: true },
  { head: 'flange', share: 36 },
  { head: 'hole', share: 13, bold: true },
  { head: 'thread', share: 32 },
  { head: 'tool', share: 54 },
  { head: 'reach', share: 40 },
] as const;
const SERVICE_COLUMNS = [
  { head: '', share: 52, bold: true },
  { head: 'tool', share: 68 },
  { head: 'reach', share: 70 },
] as const;

const stateOf = ({ reach, by }: AccessEntry): string =>
  reach === 'blocked' && by.length > 0 ? `blocked by ${by.join(', ')}` : REACH_WORDS[reach];

function boltedOf({ flanges = [] }: Design, entry: AccessEntry): Bolted[] {
  const flange = flanges.find(({ id }) => entry.where.startsWith(`flanges/${id}/fasteners/`));
  const index = Number(entry.where.split('/').at(-1));
  return entry.kind === 'fastener' && flange?.fasteners?.[index] ? [{ entry, flange, index }] : [];
}

/** By how far each lies from the middle of all; on one side and the other in turn, as they come. */
function middleOutward(bolted: readonly Bolted[]): Bolted[] {
  const places = bolted.map(({ flange, index }) => flange.fasteners![index]!.position);
  const middle = ([0, 1, 2] as const).map((k) => {
    const along = places.map((p) => p[k]);
    return (Math.min(...along) + Math.max(...along)) / 2;
  });
  const away = (p: Vec3): number => Math.hypot(...p.map((x, k) => x - middle[k]!));
  // Those as far out as each other, but for rounding, go by their number.
  const far = (b: Bolted): number => Math.round(away(b.flange.fasteners![b.index]!.position) * 1000);
  return bolted.toSorted((a, b) => far(a) - far(b) || a.index - b.index);
}

function orderWords(ordered: readonly Bolted[], several: boolean): string {
  const named = (...kinds: readonly Reach[]): string[] =>
    ordered
      .filter(({ entry }) => kinds.includes(entry.reach))
      .map(({ flange, index }) => (several ? `${flange.id} ${index + 1}` : String(index + 1)));
  const hard = named('one-tool', 'before-wrapping');
  const blocked = named('blocked');
  const first =
    hard.length > 0 && hard.length < ordered.length
      ? ` first hole ${hard.join(', ')}, which the tool reaches hardest,`
      : '';
  const never =
    blocked.length > 0
      ? ` No tool reaches hole ${blocked.join(', ')} as the header is drawn: mend that before anything is welded.`
      : '';
  return `Holes are numbered as on the flange’s drawing. Start all by hand,${first} while the header can still be shifted; then tighten in the order below, from the middle outward, in two or three rounds, to the figure that stud and gasket ask for.${never}`;
}
