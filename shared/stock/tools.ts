/**
 * The room that hand tools take, by width across flats. mm, degrees. Socket diameters for the 3/8 inch drive: from memory, good to
 * ±1 (class of ISO 2725-1 / DIN 3124). All other values are common practice, from memory: no source read.
 */

/** What `access.tools` may name. */
export const TOOL_KINDS = [
  'socket',
  'deep-socket',
  'ring-spanner',
  'open-end-spanner',
  'strap-wrench',
  'hand',
] as const;
export type ToolKind = (typeof TOOL_KINDS)[number];

export const isToolKind = (name: string): name is ToolKind => TOOL_KINDS.some((kind) => kind === name);

/** Outside, by width across flats. From memory, ±1. */
const SOCKET_DIAMETERS: readonly (readonly [number, number])[] = [
  [10, 15],
  [13, 18],
  [16, 22],
  [17, 24],
  [18, 25],
];

export type SocketSize = {
  readonly diameter: number;
  readonly length: number;
  /** How far a stud can stand into it, from its open end. */
  readonly hollow: number;
};

/** The square and the floor behind the hollow take so much of a socket's length. */
const FLOOR = 12;
const SHORT = 28;
const DEEP = 63;

export function socketSize(acrossFlats: number, deep: boolean): SocketSize {
  const length = deep ? DEEP : SHORT;
  return { diameter: socketDiameter(acrossFlats), length, hollow: length - FLOOR };
}

/** Between the table's sizes in proportion, beyond them as steep as at its ends. */
function socketDiameter(acrossFlats: number): number {
  const above = SOCKET_DIAMETERS.findIndex(([size]) => size >= acrossFlats);
  const k = above < 0 ? SOCKET_DIAMETERS.length - 1 : Math.max(1, above);
  const [[w, d], [v, e]] = [SOCKET_DIAMETERS[k - 1]!, SOCKET_DIAMETERS[k]!];
  return d + ((acrossFlats - w) * (e - d)) / (v - w);
}

/** Bars between socket and ratchet; the joint must be drawn apart by so much to put one on. */
export const EXTENSIONS: readonly number[] = [75, 150, 250];
export const EXTENSION_DIAMETER = 16;
export const DRIVE_DEPTH = 10;

/** A ratchet of 36 teeth, turned by one of them. Length from the drive's axis to the end of the handle. */
export const RATCHET = { headDiameter: 32, headHeight: 24, length: 200, handleRadius: 11, swing: 10 } as const;

export type SpannerSize = {
  /** Of the end that goes over the nut, across it. */
  readonly headWidth: number;
  readonly thickness: number;
  /** From the nut's middle to the far end. */
  readonly length: number;
  /** Half the handle's height. */
  readonly handleRadius: number;
  /** How the handle rises from the nut's plane, degrees. */
  readonly rise: number;
  /** The least that it must be swung before it takes hold anew, degrees. */
  readonly swing: number;
};

/** Twelve points, cranked: takes hold every 30°. */
export const ringSpanner = (acrossFlats: number): SpannerSize => ({
  headWidth: 1.5 * acrossFlats + 1,
  thickness: 0.5 * acrossFlats + 3,
  length: 10 * acrossFlats + 40,
  handleRadius: 0.2 * acrossFlats + 1,
  rise: 15,
  swing: 30,
});

/** Its end leans 15°, so turned over it takes hold every 30°. */
export const openEndSpanner = (acrossFlats: number): SpannerSize => ({
  headWidth: 2.15 * acrossFlats + 1,
  thickness: 0.4 * acrossFlats + 1,
  length: 10 * acrossFlats + 40,
  handleRadius: 0.2 * acrossFlats + 0.5,
  rise: 0,
  swing: 30,
});

/** Round a filter: how much farther out than it the strap reaches, and the handle that draws it. */
export const STRAP = { thickness: 4, width: 30, length: 180, handleRadius: 8, swing: 45 } as const;
/** Round what a hand takes hold of. */
export const HAND_ROOM = 25;

/** Left free round every tool, so that it can be moved at all. */
export const WORKING_CLEARANCE = 1;

/** `13 mm`, `1/2 in` are both told as mm: what is stamped on an inch tool has no bearing on its room. */
export const sizeName = (acrossFlats: number): string => `${Number(acrossFlats.toFixed(1))} mm`;
