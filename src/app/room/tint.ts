/** A tube's colours by the room round it: greys of the quick picture times the ramp, ring by ring. Flat arrays, for a drag. */
import type { GapProfile } from '../../../geometry/gaps/report';
import type { Theme } from '../theme';
import { useAnswers } from './answers';
import { useRoomLook } from './look';
import { rampColour } from './ramp';

/** The gaps along a runner while tubes are coloured by them; null while they are not. */
export function useTint(runner: string): GapProfile | null {
  const on = useRoomLook((s) => s.tinted);
  return useAnswers((s) => (on ? (s.gaps.value?.profiles.find((p) => p.runner === runner) ?? null) : null));
}

/** Between the two stations nearest, the lesser of what they say weighs in: evenly between them. */
export function marginAt({ stations, margins }: GapProfile, s: number): number {
  const last = stations.length - 1;
  if (last < 1) return margins[0] ?? Number.POSITIVE_INFINITY;
  const step = (stations[last]! - stations[0]!) / last;
  const at = Math.min(last, Math.max(0, (s - stations[0]!) / (step || 1)));
  const i = Math.min(last - 1, Math.floor(at));
  return margins[i]! + (margins[i + 1]! - margins[i]!) * (at - i);
}

type Rings = {
  /** Of each ring along the tube, from its start, mm. */
  readonly stations: Float32Array;
  /** Three bytes a vertex; rings along the wall, along the bore, then two at each end. */
  readonly shades: Uint8Array;
};

/**
 * @param offset of the tube's start from its centerline's, mm
 * @param out three numbers a vertex, linear
 */
export function tintInto(out: Float32Array, mesh: Rings, profile: GapProfile, offset: number, theme: Theme): void {
  const { stations, shades } = mesh;
  const count = stations.length;
  const around = shades.length / 3 / (2 * count + 4);
  const write = (ring: number, station: number) => {
    const [r, g, b] = rampColour(marginAt(profile, station), theme);
    const end = (ring + 1) * around * 3;
    for (let i = ring * around * 3; i < end; i += 3) {
      const k = shades[i]! / 255;
      out[i] = r * k;
      out[i + 1] = g * k;
      out[i + 2] = b * k;
    }
  };
  for (let i = 0; i < count; i++) {
    write(i, stations[i]! + offset);
    write(count + i, stations[i]! + offset);
  }
  const ends = [stations[0] ?? 0, stations[0] ?? 0, stations[count - 1] ?? 0, stations[count - 1] ?? 0];
  ends.forEach((station, k) => {
    write(2 * count + k, station + offset);
  });
}
