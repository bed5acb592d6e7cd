/**
 * The R12 dialect (AC1009): no handles, heavy polylines. Units stand in the header as later versions have them; R12 itself knows
 * none, and readers that look for them find them.
 */
import { type Group, point, real, section, text, toText, variable, whole } from './groups';
import type { DxfLayer, Entity, Extents } from './write';

export function r12(layers: readonly DxfLayer[], entities: readonly Entity[], { min, max }: Extents): string {
  const table = (name: string, records: readonly Group[][]): Group[] => [
    text(0, 'TABLE'),
    text(2, name),
    whole(70, records.length),
    ...records.flat(),
    text(0, 'ENDTAB'),
  ];
  const lineType = [
    text(0, 'LTYPE'),
    text(2, 'CONTINUOUS'),
    whole(70, 0),
    text(3, 'Solid line'),
    whole(72, 65),
    whole(73, 0),
    real(40, 0),
  ];
  const layer = ({ name, colour }: DxfLayer): Group[] => [
    text(0, 'LAYER'),
    text(2, name),
    whole(70, 0),
    whole(62, colour),
    text(6, 'CONTINUOUS'),
  ];
  return toText([
    ...section('HEADER', [
      ...variable('$ACADVER', text(1, 'AC1009')),
      ...variable('$INSBASE', ...point(10, 0, 0, 0)),
      ...variable('$EXTMIN', ...point(10, min[0], min[1], 0)),
      ...variable('$EXTMAX', ...point(10, max[0], max[1], 0)),
      ...variable('$LUNITS', whole(70, 2)),
      ...variable('$MEASUREMENT', whole(70, 1)),
      ...variable('$INSUNITS', whole(70, 4)),
    ]),
    ...section('TABLES', [
      ...table('LTYPE', [lineType]),
      ...table('LAYER', [layer({ name: '0', colour: 7 }), ...layers.map(layer)]),
    ]),
    ...section('BLOCKS', []),
    ...section('ENTITIES', entities.flatMap(entity)),
    text(0, 'EOF'),
  ]);
}

function entity(one: Entity): Group[] {
  if ('circle' in one) {
    const { centre, radius } = one.circle;
    return [text(0, 'CIRCLE'), text(8, one.layer), ...point(10, centre[0], centre[1], 0), real(40, radius)];
  }
  return [
    text(0, 'POLYLINE'),
    text(8, one.layer),
    whole(66, 1),
    ...point(10, 0, 0, 0),
    whole(70, 1),
    ...one.loop.flatMap(([x, y, bulge]) => [
      text(0, 'VERTEX'),
      text(8, one.layer),
      ...point(10, x, y, 0),
      real(42, bulge),
    ]),
    text(0, 'SEQEND'),
    text(8, one.layer),
  ];
}
