/** Sensors in their bungs as a table, and what is to be said about each. */
import type { SensorEntry } from '../../../../geometry';
import type { Design } from '../../../../shared/design/types';
import { collectorWords } from '../../../shop/fitting/words';
import { columns } from '../columns';
import { measuresIn } from '../measures';

export function sensorTable(design: Design, sensors: readonly SensorEntry[]): string {
  if (sensors.length === 0) return '';
  const { gap, unit } = measuresIn(design.display);
  const rows = sensors.map((s) => {
    const on = design.sensors?.find(({ id }) => id === s.id)?.on;
    return [
      s.id,
      on ? ('runner' in on ? on.runner : on.merge) : '',
      `${s.lean.toFixed(1)}°`,
      s.toCollector === null ? '' : collectorWords(s.toCollector, gap),
      s.room ? gap(s.room.gap) : '',
      s.room ? s.room.by : 'nothing near',
      s.spanner.fits ? 'fits' : `meets ${s.spanner.by.join(', ')}`,
    ];
  });
  const head = ['sensor', 'on', 'above level', 'collector', 'room', 'beside', 'spanner'];
  const remarks = sensors.flatMap((s) => s.remarks.map(({ message }) => [s.id, message]));
  return [
    `Sensors, ${unit}`,
    columns([head, ...rows], ['left', 'left', 'right', 'left', 'right', 'left', 'left']),
    ...(remarks.length > 0 ? [columns(remarks, ['left', 'left'])] : []),
  ].join('\n');
}
