/** What there is to say of a mesh that was read: sizes that help to tell its unit, what was left out, how whole its surface is. */
import { MM_PER_UNIT } from '../../../geometry';
import type { MeshKind } from './sniff';

export type MeshNotes = {
  readonly kind: MeshKind;
  readonly triangles: number;
  /** Without area, left out. */
  readonly dropped: number;
  /** Low x, y, z, high x, y, z, in the file's unit. */
  readonly box: readonly [number, number, number, number, number, number];
  /** Edges of one triangle only, and of more than two; null where there are too many triangles to count them. */
  readonly openEdges: number | null;
  readonly sharedEdges: number | null;
  /** How large it is in each unit that it may be in. */
  readonly size: string;
};

/** Three places are enough to tell an inch from a metre. */
const short = (x: number): string => Number(x.toPrecision(3)).toString();

/** Millimetres as people say them. */
function length(mm: number): string {
  if (mm >= 1e6) return `${short(mm / 1e6)} km`;
  if (mm >= 1000) return `${short(mm / 1000)} m`;
  return mm >= 10 ? `${short(mm / 10)} cm` : `${short(mm)} mm`;
}

/** "40 x 30 x 25 units: as mm 4 cm, as in 1.02 m at its longest". */
export function sizeWords(box: MeshNotes['box'], kind: MeshKind): string {
  const sides = [0, 1, 2].map((k) => box[k + 3]! - box[k]!);
  const longest = Math.max(...sides);
  if (kind === 'GLB') return `${sides.map(short).join(' x ')} m`;
  const as = Object.entries(MM_PER_UNIT).map(([unit, mm]) => `as ${unit} ${length(longest * mm)}`);
  return `${sides.map(short).join(' x ')} units: ${as.join(', ')} at its longest`;
}

/** A line each, for people. */
export function noteLines({ dropped, openEdges, sharedEdges }: MeshNotes): string[] {
  const lines: string[] = [];
  if (dropped > 0) lines.push(`${dropped} triangles without area were left out`);
  if (openEdges === null || sharedEdges === null) lines.push('its edges were not counted: too many triangles');
  else {
    if (openEdges > 0)
      lines.push(`its surface is open along ${openEdges} edges, as scans are: distances hold all the same`);
    if (sharedEdges > 0)
      lines.push(`${sharedEdges} edges belong to more than two triangles: distances hold all the same`);
  }
  return lines;
}
