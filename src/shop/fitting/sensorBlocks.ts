/** Where each sensor's bung is drilled: how far along and round the tube, how it leans, and what its spanner has of room. */
import type { Header, SensorEntry } from '../../../geometry';
import type { Display, Sensor } from '../../../shared/design/types';
import { formatAngle, formatLength } from '../../../shared/units';
import type { Block } from '../sheet/flow';
import { startWords, tapeWords } from './words';

export function sensorBlocks(header: Header, sensors: readonly SensorEntry[], display: Display): Block[] {
  const length = (mm: number): string => formatLength(mm, display);
  const known = sensors.flatMap((entry) => {
    const sensor = header.design.sensors?.find(({ id }) => id === entry.id);
    return sensor ? [{ entry, sensor }] : [];
  });
  if (known.length === 0) return [];
  return [
    { kind: 'heading', words: 'Sensors' },
    {
      kind: 'words',
      words:
        'Round: from the tube’s uppermost side as fitted (from +Y where it stands upright), clockwise to who looks along the flow; the length is the way round its surface. Lean: above level; a sensor that hangs holds water.',
    },
    {
      kind: 'table',
      columns: COLUMNS,
      rows: known.map(({ entry, sensor }) => [
        sensor.id,
        alongWords(header, sensor, display),
        `${angle(sensor.clock)}, ${tapeWords((Math.abs(sensor.clock) / 360) * Math.PI * diameterAt(header, sensor), display)} round`,
        angle(entry.lean),
        [
          entry.room ? `${length(entry.room.gap)} to ${entry.room.by}` : 'nothing near',
          entry.spanner.fits ? 'spanner fits' : `spanner meets ${entry.spanner.by.join(', ')}`,
        ].join('; '),
      ]),
    },
    ...known.flatMap(({ entry, sensor }) => [
      // On a collector, the place along it says so already.
      ...(entry.toCollector === null || 'merge' in sensor.on
        ? []
        : [
            {
              kind: 'words',
              words: beforeWords(header, sensor.id, sensor.on.runner, entry.toCollector, display),
            } as const,
          ]),
      ...entry.remarks.map(({ message }) => ({ kind: 'words', words: message }) as const),
    ]),
  ];
}

const COLUMNS = [
  { head: 'sensor', share: 28, bold: true },
  { head: 'along', share: 50 },
  { head: 'round', share: 38 },
  { head: 'lean', share: 18 },
  { head: 'room', share: 56 },
] as const;

const angle = (degrees: number): string => formatAngle(degrees).replace('-', '−');

function beforeWords(header: Header, id: string, runner: string, toCollector: number, display: Display): string {
  const merge = header.runners.find((r) => r.runner.id === runner)?.runner.to.merge ?? 'the collector';
  return `${id} stands ${tapeWords(Math.abs(toCollector), display)} before the outlet of ${merge}.`;
}

function alongWords(header: Header, { on, at }: Sensor, display: Display): string {
  const where = 'runner' in on ? startWords(header, on.runner) : 'from its inlet plane';
  return `${'runner' in on ? on.runner : on.merge}: ${tapeWords(at, display)} ${where}`;
}

/** Outside, where the bung sits: a collector narrows from its inlets to its outlet. */
function diameterAt(header: Header, { on, at }: Sensor): number {
  if ('runner' in on) return 2 * (header.runners.find((r) => r.runner.id === on.runner)?.tubeRadius ?? 0);
  const body = header.merges.get(on.merge)?.body;
  if (!body) return 0;
  const share = Math.min(1, Math.max(0, at / body.length));
  return 2 * (body.startRadius + share * (body.endRadius - body.startRadius));
}
