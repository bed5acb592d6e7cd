/**
 * The text of a DXF file → its entities, each a list of group codes and values as they stand. Written here because the
 * reading library at hand drops a polyline's corners where they carry identifiers (group 91), and reads for ever where a
 * POLYLINE has no end; it is kept to judge what we write. Source: the DXF reference, groups in order.
 */
import { DxfError } from './dxfError';

export type Group = readonly [code: number, value: string];

export type Entity = {
  readonly type: string;
  /** Of the file, from 1. */
  readonly line: number;
  readonly groups: readonly Group[];
};

export type DxfFile = {
  /** $INSUNITS as it stands; null where the file has none. */
  readonly unitCode: number | null;
  /** A POLYLINE is followed by its VERTEX entities. */
  readonly entities: readonly Entity[];
};

/** More than any flange's drawing; a larger one is a whole car's. */
export const MOST_ENTITIES = 50_000;

export function readGroups(bytes: Uint8Array): DxfFile {
  const start = new TextDecoder('latin1').decode(bytes.subarray(0, 64));
  if (start.startsWith('AutoCAD Binary DXF'))
    throw new DxfError('it is a binary DXF file: save it as an ASCII (text) one');
  if (bytes.length === 0) throw new DxfError('it is empty');
  const text = new TextDecoder().decode(bytes).replace(/^\uFEFF/, '');
  if (text.includes('\0') || !/^\s*(999\b[^\n]*\n[^\n]*\n\s*)*0\s*\r?\n\s*SECTION\b/.test(text.slice(0, 4000)))
    throw new DxfError('it is not a DXF file: it does not begin with a section; save the drawing as DXF');
  const lines = text.split(/\r\n|\r|\n/);
  let section = '';
  let variable = '';
  let unitCode: number | null = null;
  let ended = false;
  const entities: { type: string; line: number; groups: Group[] }[] = [];
  for (let i = 0; i + 1 < lines.length; i += 2) {
    const code = Number(lines[i]!.trim());
    const value = lines[i + 1]!.trim();
    if (!/^\s*-?\d+\s*$/.test(lines[i]!))
      throw new DxfError(
        `line ${i + 1} should hold a group code, and holds ${JSON.stringify(lines[i]!.slice(0, 20))}: export it again`,
      );
    if (code === 0) {
      if (value === 'EOF') {
        ended = true;
        break;
      }
      if (value === 'SECTION') section = lines[i + 3]?.trim() ?? '';
      else if (value === 'ENDSEC') section = '';
      else if (section === 'ENTITIES') {
        if (entities.length >= MOST_ENTITIES)
          throw new DxfError(`it holds more than ${MOST_ENTITIES} entities: save the flange's outline and holes alone`);
        entities.push({ type: value, line: i + 1, groups: [] });
      }
    } else if (section === 'ENTITIES') entities.at(-1)?.groups.push([code, value]);
    else if (section === 'HEADER') {
      if (code === 9) variable = value;
      else if (variable === '$INSUNITS' && code === 70) unitCode = Number(value);
    }
  }
  if (!ended) throw new DxfError('it is cut short: its end (EOF) is missing; copy or export it again');
  return { unitCode, entities };
}
