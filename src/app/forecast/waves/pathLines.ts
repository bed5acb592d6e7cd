/** A followed wave as lines over the picture, leg by leg, wherever its pipes are on screen; once more a cycle later or earlier where seen. */
import { CYCLE } from '../../../pulse/forecast/cycle';
import { valveTimes } from '../../../pulse/forecast/gasExchange';
import type { TracedLeg } from '../../../pulse/forecast/traceWave';
import { type PathRun, type WavePath, type WaveStart, wavePaths } from '../../../pulse/forecast/wavePath';
import type { SourcePart } from '../../../pulse/forecast/waveSources';
import { type AngleView, angleText } from './angles';
import { type WayPanel, wayX } from './wayPlan';

export type PathLine = {
  readonly key: string;
  readonly d: string;
  /** After it was sent back by a larger area or the mouth: it runs as suction. */
  readonly suction: boolean;
  /** On its way to the valve. */
  readonly back: boolean;
};

/** A wave's way as it is drawn, whether followed from its valve or found back from the overlap. */
export type DrawnWave = {
  readonly key: string;
  readonly legs: readonly (TracedLeg & { readonly suction: boolean })[];
  readonly arrival: number | null;
  /** What arrives. */
  readonly suction: boolean;
  /** Where it begins on the own valve. */
  readonly leaves: { readonly angle: number; readonly words: string } | null;
};

export function drawnWave(wave: WavePath): DrawnWave {
  // Across from another cylinder it is no echo: it keeps its kind.
  const isTurned = wave.from === wave.to && wave.turn.back < 0;
  let turns = 0;
  const legs = wave.legs.map((leg, k) => {
    if (k > 0 && leg.direction < 0 && wave.legs[k - 1]!.direction > 0) turns++;
    return { ...leg, suction: isTurned && turns % 2 === 1 };
  });
  const leaves = `${wave.begins === 'peak' ? 'pulse’s peak leaves' : 'valve opens'}, ${angleText(wave.start)}`;
  return {
    ...{ key: waveKey(wave), legs, arrival: wave.arrival, suction: wave.strength < 0 },
    leaves: wave.from === wave.to ? { angle: wave.start, words: leaves } : null,
  };
}

/** @param way pipes from the valve to the open air: on them it comes as what it is in the overlap, elsewhere and before as it was sent */
export function drawnSource(part: SourcePart, cylinder: number, way: readonly string[]): DrawnWave {
  const { from, legs, pressure, sent } = part;
  const start = legs[0]!.angles[0]!;
  return {
    key: sourceKey(part),
    legs: legs.map((leg) => ({ ...leg, suction: (leg.direction < 0 && way.includes(leg.pipe) ? pressure : sent) < 0 })),
    arrival: legs.at(-1)!.angles.at(-1)!,
    suction: pressure < 0,
    leaves: from === cylinder ? { angle: start, words: `leaves, ${angleText(start)}` } : null,
  };
}

export function pathLines(
  wave: Pick<DrawnWave, 'legs'>,
  panels: readonly WayPanel[],
  view: AngleView,
  toY: (angle: number) => number,
): PathLine[] {
  return wave.legs.flatMap((leg, k) => {
    const panel = panels.find(({ pipe }) => pipe === leg.pipe);
    if (!panel) return [];
    return [-CYCLE, 0, CYCLE].flatMap((shift) => {
      const d = lineOf(leg.angles, leg.x, shift, view, (x) => wayX(panel, x), toY);
      return d ? [{ key: `${k} ${shift}`, d, suction: leg.suction, back: leg.direction < 0 }] : [];
    });
  });
}

function lineOf(
  angles: Float64Array,
  x: Float64Array,
  shift: number,
  view: AngleView,
  toX: (x: number) => number,
  toY: (angle: number) => number,
): string {
  if (angles[0]! + shift > view.to || angles.at(-1)! + shift < view.from) return '';
  const steps: string[] = [];
  const last = angles.length - 1;
  for (let k = 0; k <= last; k++) {
    // Every fourth step is enough for the eye; the ends are always there.
    if (k % 4 !== 0 && k !== last) continue;
    const angle = angles[k]! + shift;
    if (angle < view.from || angle > view.to) continue;
    steps.push(`${toX(x[k]!).toFixed(1)} ${toY(angle).toFixed(1)}`);
  }
  return steps.length > 1 ? `M${steps.join('L')}` : '';
}

export const waveKey = ({ from, turn }: WavePath): string => `${from} ${turn.pipe}`;
export const sourceKey = ({ from, turn, taper }: SourcePart): string => `source ${from} ${turn.pipe} ${taper}`;

/** Weaker than this share is not listed. */
const LISTED = 0.1;
/** Long after the exhaust valve has closed nothing more comes of it, crank degrees. */
const AFTER = 60;

/** What both faces tell of: strong enough, and at the valve while it is open or soon after; or swept away on its way. */
export function toldWaves(run: PathRun, cylinder: number, begins?: WaveStart): WavePath[] {
  const { exhaustOpens, exhaustCloses } = valveTimes(run.engine);
  return wavePaths(run, cylinder, begins).filter(
    ({ strength, arrival }) =>
      Math.abs(strength) >= LISTED &&
      (arrival === null || (arrival >= exhaustOpens && arrival <= exhaustCloses + AFTER)),
  );
}
