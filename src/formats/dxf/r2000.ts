/**
 * The R2000 dialect (AC1015), with all that strict readers ask for: every table, both block records with their layouts, and for
 * each thing its handle and its owner's. Source: the DXF reference. Handles count up from 1, so the same drawing has the same.
 */
import { type Group, point, real, section, text, toText, variable, whole } from './groups';
import { layout } from './layout';
import type { DxfLayer, Entity, Extents } from './write';

/** Handles, in the order they are asked for. */
class Handles {
  private last = 0;
  next = (): string => (++this.last).toString(16).toUpperCase();
}

const NOBODY = '0';

export function r2000(layers: readonly DxfLayer[], entities: readonly Entity[], extents: Extents): string {
  const handles = new Handles();
  const { next } = handles;
  const root = next();
  const [groups, layouts] = [next(), next()];
  const spaces = [
    { block: '*Model_Space', sheet: 'Model', record: next(), sheetHandle: next() },
    { block: '*Paper_Space', sheet: 'Layout1', record: next(), sheetHandle: next() },
  ] as const;

  const record = (table: string, name: string, marker: string, owner: string, own: string, ...rest: Group[]) => [
    text(0, table),
    text(table === 'DIMSTYLE' ? 105 : 5, own),
    text(330, owner),
    text(100, 'AcDbSymbolTableRecord'),
    text(100, marker),
    text(2, name),
    ...rest,
  ];
  const lineType = (owner: string, name: string, about: string) =>
    record('LTYPE', name, 'AcDbLinetypeTableRecord', owner, next(), whole(70, 0), text(3, about), whole(72, 65), whole(73, 0), real(40, 0)); // biome-ignore format: one record
  const layer = (owner: string, { name, colour }: DxfLayer) =>
    record('LAYER', name, 'AcDbLayerTableRecord', owner, next(), whole(70, 0), whole(62, colour), text(6, 'Continuous')); // biome-ignore format: one record
  const kinds: readonly (readonly [table: string, records: (owner: string) => Group[][]])[] = [
    [
      'VPORT',
      (owner) => [
        record('VPORT', '*Active', 'AcDbViewportTableRecord', owner, next(), whole(70, 0), ...viewOf(extents)),
      ],
    ],
    [
      'LTYPE',
      (owner) => [
        lineType(owner, 'ByBlock', ''),
        lineType(owner, 'ByLayer', ''),
        lineType(owner, 'Continuous', 'Solid line'),
      ],
    ],
    ['LAYER', (owner) => [{ name: '0', colour: 7 }, ...layers].map((l) => layer(owner, l))],
    [
      'STYLE',
      (owner) => [
        record('STYLE', 'Standard', 'AcDbTextStyleTableRecord', owner, next(), whole(70, 0), real(40, 0), real(41, 1), real(50, 0), whole(71, 0), real(42, 2.5), text(3, 'txt'), text(4, '')), // biome-ignore format: one record
      ],
    ],
    ['VIEW', () => []],
    ['UCS', () => []],
    ['APPID', (owner) => [record('APPID', 'ACAD', 'AcDbRegAppTableRecord', owner, next(), whole(70, 0))]],
    ['DIMSTYLE', (owner) => [record('DIMSTYLE', 'Standard', 'AcDbDimStyleTableRecord', owner, next(), whole(70, 0))]],
    [
      'BLOCK_RECORD',
      (owner) =>
        spaces.map((s) =>
          record('BLOCK_RECORD', s.block, 'AcDbBlockTableRecord', owner, s.record, text(340, s.sheetHandle)),
        ),
    ],
  ];
  const tables = kinds.flatMap(([name, records]): Group[] => {
    const own = next();
    const all = records(own);
    return [
      text(0, 'TABLE'),
      text(2, name),
      text(5, own),
      text(330, NOBODY),
      text(100, 'AcDbSymbolTable'),
      whole(70, all.length),
      ...(name === 'DIMSTYLE' ? [text(100, 'AcDbDimStyleTable')] : []),
      ...all.flat(),
      text(0, 'ENDTAB'),
    ];
  });
  const end = (kind: string, marker: string, owner: string, ...rest: Group[]): Group[] => [
    text(0, kind),
    text(5, next()),
    text(330, owner),
    text(100, 'AcDbEntity'),
    text(8, '0'),
    text(100, marker),
    ...rest,
  ];
  const blocks = spaces.flatMap((s): Group[] => [
    ...end('BLOCK', 'AcDbBlockBegin', s.record, text(2, s.block), whole(70, 0), ...point(10, 0, 0, 0), text(3, s.block), text(1, '')), // biome-ignore format: one record
    ...end('ENDBLK', 'AcDbBlockEnd', s.record),
  ]);
  const drawn = entities.flatMap((one) => entity(one, next(), spaces[0].record));
  const dictionary = (own: string, owner: string, entries: readonly (readonly [string, string])[]): Group[] => [
    text(0, 'DICTIONARY'),
    text(5, own),
    text(330, owner),
    text(100, 'AcDbDictionary'),
    whole(281, 1),
    ...entries.flatMap(([name, handle]) => [text(3, name), text(350, handle)]),
  ];
  const objects = [
    ...dictionary(root, NOBODY, [
      ['ACAD_GROUP', groups],
      ['ACAD_LAYOUT', layouts],
    ]),
    ...dictionary(groups, root, []),
    ...dictionary(
      layouts,
      root,
      spaces.map((s) => [s.sheet, s.sheetHandle]),
    ),
    ...spaces.flatMap((s, k) => layout(s.sheet, k, s.sheetHandle, layouts, s.record, extents)),
  ];
  const { min, max } = extents;
  return toText([
    ...section('HEADER', [
      ...variable('$ACADVER', text(1, 'AC1015')),
      ...variable('$DWGCODEPAGE', text(3, 'ANSI_1252')),
      ...variable('$INSBASE', ...point(10, 0, 0, 0)),
      ...variable('$EXTMIN', ...point(10, min[0], min[1], 0)),
      ...variable('$EXTMAX', ...point(10, max[0], max[1], 0)),
      ...variable('$LUNITS', whole(70, 2)),
      ...variable('$HANDSEED', text(5, next())),
      ...variable('$MEASUREMENT', whole(70, 1)),
      ...variable('$INSUNITS', whole(70, 4)),
    ]),
    ...section('CLASSES', []),
    ...section('TABLES', tables),
    ...section('BLOCKS', blocks),
    ...section('ENTITIES', drawn),
    ...section('OBJECTS', objects),
    text(0, 'EOF'),
  ]);
}

/** All of it, with a little room round it. */
function viewOf({ min, max }: Extents): Group[] {
  const height = 1.1 * Math.max(max[1] - min[1], (max[0] - min[0]) / ASPECT, 1);
  return [
    ...point(10, 0, 0),
    ...point(11, 1, 1),
    ...point(12, (min[0] + max[0]) / 2, (min[1] + max[1]) / 2),
    ...point(13, 0, 0),
    ...point(14, 10, 10),
    ...point(15, 10, 10),
    ...point(16, 0, 0, 1),
    ...point(17, 0, 0, 0),
    real(40, height),
    real(41, ASPECT),
    real(42, 50),
    real(43, 0),
    real(44, 0),
    real(50, 0),
    real(51, 0),
    ...[71, 0, 72, 1000, 73, 1, 74, 3, 75, 0, 76, 0, 77, 0, 78, 0].flatMap((code, k, all) =>
      k % 2 === 0 ? [whole(code, all[k + 1]!)] : [],
    ),
  ];
}
const ASPECT = 1.5;

function entity(one: Entity, own: string, owner: string): Group[] {
  const head = (kind: string): Group[] => [
    text(0, kind),
    text(5, own),
    text(330, owner),
    text(100, 'AcDbEntity'),
    text(8, one.layer),
  ];
  if ('circle' in one) {
    const { centre, radius } = one.circle;
    return [...head('CIRCLE'), text(100, 'AcDbCircle'), ...point(10, centre[0], centre[1], 0), real(40, radius)];
  }
  return [
    ...head('LWPOLYLINE'),
    text(100, 'AcDbPolyline'),
    whole(90, one.loop.length),
    whole(70, 1),
    real(43, 0),
    ...one.loop.flatMap(([x, y, bulge]) => [...point(10, x, y), real(42, bulge)]),
  ];
}
