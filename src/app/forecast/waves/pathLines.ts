/** A followed wave as lines over the picture, leg by leg, wherever its pipes are on screen; once more a cycle later or earlier where seen. */
import { CYCLE } from '../../../pulse/forecast/cycle';
import { valveTimes } from '../../../pulse/forecast/gasExchange';
import { type PathRun, type WavePath, type WaveStart, wavePaths } from '../../../pulse/forecast/wavePath';
import type { AngleView } from './angles';
import { type WayPanel, wayX } from './wayPlan';

export type PathLine = {
  readonly key: string;
  readonly d: string;
  /** After it was sent back by a larger area or the mouth: it runs as suction. */
  readonly suction: boolean;
  /** On its way to the valve. */
  readonly back: boolean;
};

export function pathLines(
  wave: WavePath,
  panels: readonly WayPanel[],
  view: AngleView,
  toY: (angle: number) => number,
): PathLine[] {
  const lines: PathLine[] = [];
  let turns = 0;
  wave.legs.forEach((leg, k) => {
    if (k > 0 && leg.direction < 0 && wave.legs[k - 1]!.direction > 0) turns++;
    const panel = panels.find(({ pipe }) => pipe === leg.pipe);
    if (!panel) return;
    // Across from another cylinder it is no echo: it keeps its kind.
    const once = wave.from === wave.to && wave.turn.back < 0;
    const suction = once && turns % 2 === 1;
    for (const shift of [-CYCLE, 0, CYCLE]) {
      const d = lineOf(leg.angles, leg.x, shift, view, (x) => wayX(panel, x), toY);
      if (d) lines.push({ key: `${k} ${shift}`, d, suction, back: leg.direction < 0 });
    }
  });
  return lines;
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
