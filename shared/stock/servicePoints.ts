/**
 * Usual sizes of what must be reached on an engine beside the header's fasteners, by kind. mm. All are common practice, from
 * memory: no source read. A design's own numbers come first.
 */
import type { ServiceKind, ServicePoint } from '../design/types';
import type { ToolKind } from './tools';

export type ServiceSize = {
  /** What is put on it; any one of them will do. */
  readonly tools: readonly ToolKind[];
  readonly acrossFlats: number;
  /** Of what comes out. */
  readonly diameter: number;
  /** Of what comes out, and so how far it is drawn. */
  readonly length: number;
  /** How much of it stands out from the place already: a filter all of it, a dipstick nothing. From 0 to 1. */
  readonly standsOut: number;
  /** Of the hexagon that a tool takes hold of, from the place. */
  readonly headHeight: number;
};

const SPANNERS: readonly ToolKind[] = ['socket', 'deep-socket', 'ring-spanner', 'open-end-spanner'];

const USUAL: Readonly<Record<ServiceKind, ServiceSize>> = {
  // A deep socket of its own goes over the plug; the boot comes off first, then the plug is drawn.
  'spark-plug': { tools: ['deep-socket'], acrossFlats: 16, diameter: 24, length: 100, standsOut: 0.5, headHeight: 10 },
  'oil-filter': {
    tools: ['hand', 'strap-wrench'],
    acrossFlats: 0,
    diameter: 76,
    length: 90,
    standsOut: 1,
    headHeight: 0,
  },
  starter: { tools: ['hand'], acrossFlats: 0, diameter: 80, length: 120, standsOut: 1, headHeight: 0 },
  dipstick: { tools: ['hand'], acrossFlats: 0, diameter: 10, length: 450, standsOut: 0, headHeight: 0 },
  bolt: { tools: SPANNERS, acrossFlats: 13, diameter: 8, length: 30, standsOut: 0, headHeight: 5.3 },
};

export function serviceSize(point: ServicePoint): ServiceSize {
  const usual = USUAL[point.kind];
  const { acrossFlats = usual.acrossFlats, diameter = usual.diameter, length = usual.length } = point;
  // The head of a bolt grows with its hexagon: 13 across flats has 5.3.
  const headHeight = point.kind === 'bolt' ? 0.41 * acrossFlats : usual.headHeight;
  return { ...usual, acrossFlats, diameter, length, headHeight };
}

/** For people: `spark plug`. */
export const serviceName: Readonly<Record<ServiceKind, string>> = {
  'spark-plug': 'spark plug',
  'oil-filter': 'oil filter',
  starter: 'starter',
  dipstick: 'dipstick',
  bolt: 'bolt',
};
