/** What a thing is called where it is measured, and what a measurement says: plain words, in the design's unit. */
import { components, DEGREES, type Measurement, type Span, type Thing } from '../../../geometry';
import type { Display } from '../../../shared/design/types';
import { formatAngle, formatLength } from '../../../shared/units';
import { signedNumber } from '../format';

export function nameOf(thing: Thing): string {
  switch (thing.kind) {
    case 'runner':
      if (thing.bend !== undefined) return `${thing.id} bend ${thing.bend + 1}`;
      if (thing.straight !== undefined) return `${thing.id} straight ${thing.straight + 1}`;
      return thing.id;
    case 'station':
      return `${thing.id} at ${thing.station.toFixed(0)}`;
    case 'port':
      return `port ${thing.id}`;
    case 'fastener':
      return `${thing.id} hole ${thing.index + 1}`;
    case 'merge':
      if (thing.mouth === undefined) return thing.id;
      return thing.mouth === 'outlet' ? `${thing.id} outlet` : `${thing.id} inlet ${thing.mouth}`;
    case 'surrounding':
      return thing.id;
    case 'point':
      return thing.on ? `a point on ${thing.on.split('/')[1]}` : 'a point';
  }
}

/** A surface has a gap, a bare place a distance. */
const isPlace = (thing: Thing): boolean => thing.kind === 'point' || thing.kind === 'station';

/** The one dimension that stands on the picture: the gap, or between two places and overlapping things what can be had. */
export function mainSpan(m: Measurement): Span | null {
  return m.gap ?? m.centres;
}

export function mainWords(m: Measurement, a: Thing, b: Thing, display: Display): string {
  const span = mainSpan(m);
  if (!span) return m.along === null ? 'no distance' : `${formatLength(m.along, display)} along`;
  if (span.value < 0) return `overlap ${formatLength(-span.value, display)}`;
  return isPlace(a) && isPlace(b) ? formatLength(span.value, display) : `gap ${formatLength(span.value, display)}`;
}

export type Row = { readonly label: string; readonly text: string };

/** Everything that there is to say, in the order of use. */
export function rowsOf(m: Measurement, display: Display): Row[] {
  const rows: Row[] = [];
  const say = (label: string, text: string) => rows.push({ label, text });
  if (m.gap && m.gap.value < 0) say('Overlap', formatLength(-m.gap.value, display));
  else if (m.gap) say('Gap', formatLength(m.gap.value, display));
  const span = mainSpan(m);
  if (span)
    say(
      'ΔX ΔY ΔZ',
      components(span)
        .map((d) => signedNumber(d, display, 2))
        .join('  '),
    );
  if (m.centres && Math.abs(m.centres.value - (m.gap?.value ?? Number.NaN)) > SAME)
    say('Centre to centre', formatLength(m.centres.value, display));
  if (m.angle !== null) say('Angle', formatAngle(m.angle * DEGREES));
  if (m.along !== null) say('Along the runner', formatLength(m.along, display));
  return rows;
}

/** Not worth saying twice, mm. */
const SAME = 0.005;
