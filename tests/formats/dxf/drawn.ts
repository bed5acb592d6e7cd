/** DXF text, written here group by group, so that the reader is not judged by our own writer. */
export type Groups = readonly (readonly [number, string | number])[];

export const dxf = (entities: readonly Groups[], unit: number | null = 4): Uint8Array => {
  const groups: Groups = [
    ...section(
      'HEADER',
      unit === null
        ? []
        : [
            [9, '$INSUNITS'],
            [70, unit],
          ],
    ),
    ...section('ENTITIES', entities.flat()),
    [0, 'EOF'],
  ];
  return new TextEncoder().encode(groups.map(([code, value]) => `${code}\r\n${value}\r\n`).join(''));
};

const section = (name: string, groups: Groups): Groups => [[0, 'SECTION'], [2, name], ...groups, [0, 'ENDSEC']];

export const line = (x: number, y: number, u: number, v: number, layer = '0'): Groups => [
  [0, 'LINE'],
  [5, '2F'],
  [8, layer],
  [10, x],
  [20, y],
  [11, u],
  [21, v],
];
export const circle = (x: number, y: number, r: number, layer = '0', more: Groups = []): Groups => [
  [0, 'CIRCLE'],
  [5, '30'],
  [8, layer],
  [10, x],
  [20, y],
  [40, r],
  ...more,
];
export const arc = (x: number, y: number, r: number, from: number, to: number): Groups => [
  [0, 'ARC'],
  [8, '0'],
  [10, x],
  [20, y],
  [40, r],
  [50, from],
  [51, to],
];
export const polyline = (
  corners: readonly (readonly [number, number, number])[],
  flags = 1,
  each: Groups = [],
): Groups => [
  [0, 'LWPOLYLINE'],
  [5, '31'],
  [8, 'OUTLINE'],
  [90, corners.length],
  [70, flags],
  ...corners.flatMap(([x, y, b]): Groups => [[10, x], [20, y], [42, b], ...each]),
];
export const oldPolyline = (corners: readonly (readonly [number, number, number])[], flags = 1): Groups => [
  [0, 'POLYLINE'],
  [8, 'OUTLINE'],
  [66, 1],
  [70, flags],
  ...corners.flatMap(
    ([x, y, b]): Groups => [
      [0, 'VERTEX'],
      [8, 'OUTLINE'],
      [10, x],
      [20, y],
      [42, b],
    ],
  ),
  [0, 'SEQEND'],
];
