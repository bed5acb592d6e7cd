/**
 * What sensors in an exhaust measure, mm, and where they are usually put. Each value says where it comes from: `memory` is the
 * usual size as it is remembered, read in no source; `practice` is common practice, without a source.
 */
import type { SensorKind } from '../design/types';

export type SensorSize = {
  readonly thread: string;
  /** Of the bung that is welded on: outside, and how far it stands off the tube. */
  readonly bung: { readonly diameter: number; readonly height: number };
  /** The widest round bar that holds sensor, plug and lead. */
  readonly diameter: number;
  /** Straight out of the tube: bung, sensor, plug, and the lead until it has turned aside. */
  readonly length: number;
  /** Hexagon: across its flats, and how far above the bung its middle lies. */
  readonly acrossFlats: number;
  readonly hexHeight: number;
  /** Spanner with open ends: half the width of its head, half its thickness, length from the hexagon's middle. */
  readonly spanner: { readonly head: number; readonly thickness: number; readonly length: number };
  /** Slotted socket, which the lead passes; null where none is made for it. Its ratchet stands on top. */
  readonly socket: { readonly diameter: number; readonly length: number } | null;
};

export const SENSOR_SIZES: Readonly<Record<SensorKind, SensorSize>> = {
  oxygen: {
    thread: 'M18×1.5', // memory
    bung: { diameter: 28, height: 13 }, // memory
    diameter: 26, // memory: the hexagon of 22 is 25.4 across its corners
    length: 100, // memory: some 60 beyond the bung, and 25 to 30 for the lead's bend
    acrossFlats: 22, // memory
    hexHeight: 5, // memory
    spanner: { head: 23, thickness: 5, length: 240 }, // memory
    socket: { diameter: 32, length: 85 }, // memory
  },
  temperature: {
    thread: 'M14×1.5', // memory
    bung: { diameter: 20, height: 12 }, // memory
    diameter: 20, // memory: the hexagon of 17 is 19.6 across its corners
    length: 75, // memory
    acrossFlats: 17, // memory
    hexHeight: 5, // memory
    spanner: { head: 18, thickness: 4, length: 200 }, // memory
    socket: null, // practice: its lead is fixed to it, it is done up with a spanner
  },
};

/** Handle of a ratchet or spanner, half its width. Memory. */
export const SENSOR_HANDLE = 9;
/** Ratchet: length of its handle, how far its middle stands above the socket. Memory. */
export const SENSOR_RATCHET = { length: 180, above: 15 };
/** Free swing that a spanner needs to find the next flats: 30° where its head is set at 15° and it is turned over. Memory. */
export const SENSOR_SWING_DEG = 30;

/** An oxygen sensor leans at least so much above horizontal, so that condensed water runs off it. Common practice. */
export const LEAST_OXYGEN_LEAN_DEG = 10;
/** Air round a sensor, so that its lead and seal outlive the heat. Common practice. */
export const SENSOR_AIR = 10;
/** Room in which a hand can still work a tool. Common practice. */
export const SENSOR_TOOL_ROOM = 1;
/** A temperature probe sits at most so far from its port, and all of them as far to within this. Common practice. */
export const FARTHEST_PROBE = 150;
export const EQUAL_PROBES = 3;
/** A straight that begins no farther off than this is near enough to move to. Our own choice. */
export const NEAR_STRAIGHT = 100;
