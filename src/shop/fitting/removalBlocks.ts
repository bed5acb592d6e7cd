/** How the header comes off, step by step with distances, and goes on the other way round; and what to leave loose where it does not. */
import { type Header, type Leg, legsOf, type RemovalPiece, type RemovalReport } from '../../../geometry';
import type { Display } from '../../../shared/design/types';
import { formatLength } from '../../../shared/units';
import type { Vec3 } from '../../../shared/vec3';
import type { Block } from '../sheet/flow';

/** A path of more steps than this is shown on the screen, not told. */
const MOST_STEPS = 14;

export function removalBlocks(header: Header, { pieces, joints }: RemovalReport, display: Display): Block[] {
  if (pieces.length === 0) return [];
  return [
    { kind: 'heading', words: 'Getting it off, and on the other way round' },
    {
      kind: 'words',
      words:
        'Distances are those of the piece’s middle. X runs along the crankshaft, Y across it, Z up, as in the design; a turn about X, Y or Z is clockwise to who looks along it, a negative one the other way.',
    },
    ...pieces.flatMap((piece) => pieceBlocks(header, piece, display)),
    ...joints.map((j) => ({ kind: 'words', words: j.message }) as const),
  ];
}

function pieceBlocks(header: Header, piece: RemovalPiece, display: Display): Block[] {
  const legs = legsOf(piece.path, middleOf(header, piece));
  const lowering = piece.raised ? legs.findIndex(isDown) : -1;
  const steps = legs.slice(0, MOST_STEPS).map((leg, i) => {
    const off = i === 0 && piece.slides && isStraightOff(header, piece, leg);
    const raised = i === lowering ? ', with the vehicle raised and on stands' : '';
    return [String(i + 1), `${legWords(leg, display, off)}${raised}`];
  });
  const more = legs.length - steps.length;
  return [
    { kind: 'words', words: piece.message },
    ...(steps.length > 0
      ? [
          {
            kind: 'table',
            columns: [
              { head: 'step', share: 16, bold: true },
              { head: '', share: 174 },
            ],
            rows: [...steps, ...(more > 0 ? [['', `and ${more} more, as the app shows them`]] : [])],
          } as const,
        ]
      : []),
  ];
}

const AXES = [
  ['toward +X', 'toward −X'],
  ['toward +Y', 'toward −Y'],
  ['up', 'down'],
] as const;

/** Of a leg's length, or turn: less than this is not worth a word. */
const SMALL_SHARE = 0.05;
const SMALL_TURN = 0.5;

/** `40.00 mm toward +Y and 120.00 mm down, turning it 11.5° about X` */
export function legWords({ move, turn }: Leg, display: Display, straightOff = false): string {
  const way = Math.hypot(...move);
  const shifts = move.flatMap((x, k) =>
    Math.abs(x) > SMALL_SHARE * way && way > 0.5 ? [`${lengthOf(Math.abs(x))} ${AXES[k]![x > 0 ? 0 : 1]}`] : [],
  );
  const moved = straightOff ? `Drawn off straight, ${lengthOf(way)}` : sentence(shifts);
  const angle = (Math.hypot(...turn) * 180) / Math.PI;
  if (angle < SMALL_TURN) return moved || 'Hold it there';
  const turned = `${turnWords(turn, angle)}`;
  return moved ? `${moved}, turning it ${turned}` : `Turn it ${turned} where it is`;

  function lengthOf(mm: number): string {
    return formatLength(mm, display, display === 'in' ? 1 : 0);
  }
}

function turnWords(turn: Vec3, angle: number): string {
  const shares = turn.map((x) => (x * 180) / Math.PI / angle);
  const main = shares.findIndex((s) => Math.abs(s) > 0.98);
  if (main >= 0) return `${(Math.sign(shares[main]!) * angle).toFixed(0).replace('-', '−')}° about ${'XYZ'[main]}`;
  return `${angle.toFixed(0)}° about the direction ${shares.map((s) => s.toFixed(2).replace('-', '−')).join(', ')}`;
}

/** Lowered by more than it is shifted. */
const isDown = ({ move: [x, y, z] }: Leg): boolean => z < 0 && -z > Math.hypot(x, y);

const sentence = (parts: readonly string[]): string =>
  parts.length > 1 ? `${parts.slice(0, -1).join(', ')} and ${parts.at(-1)}` : (parts[0] ?? '');

/** Along the ports of its flanges, but for a few degrees. */
function isStraightOff(header: Header, { flanges }: RemovalPiece, { move, turn }: Leg): boolean {
  const way = Math.hypot(...move);
  const ports = (header.design.flanges ?? []).filter((f) => flanges.includes(f.id)).flatMap((f) => f.ports);
  const along = ports.map((id) => {
    const [x, y, z] = header.ports.get(id)!.pose.direction;
    return x * move[0] + y * move[1] + z * move[2];
  });
  return along.length > 0 && Math.hypot(...turn) < 0.01 && along.every((a) => a > 0.998 * way);
}

/** Of the box round its tubes' points and its collectors. */
function middleOf(header: Header, { runners, merges }: RemovalPiece): Vec3 {
  const points: Vec3[] = [
    ...header.runners.filter((r) => runners.includes(r.runner.id)).flatMap((r) => r.centerline?.points ?? []),
    ...merges.flatMap((id) => (header.merges.has(id) ? [header.merges.get(id)!.outlet.position] : [])),
  ];
  const middle = (k: 0 | 1 | 2): number => {
    const along = points.map((p) => p[k]);
    return along.length > 0 ? (Math.min(...along) + Math.max(...along)) / 2 : 0;
  };
  return [middle(0), middle(1), middle(2)];
}
