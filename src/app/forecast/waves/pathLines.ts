/** A followed wave as lines over the picture, leg by leg, wherever its pipes are on screen; once more a cycle later or earlier where seen. */
import { CYCLE } from '../../../pulse/forecast/waveField';
import type { WavePath } from '../../../pulse/forecast/wavePath';
import { isOutweighed } from '../../../pulse/forecast/waveWords';
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

/** The one to speak of first: strongest within the overlap; else the own one that comes nearest to it. */
export function foremost(waves: readonly WavePath[]): WavePath | null {
  const there = waves.filter(({ arrival }) => arrival !== null);
  const met = there.filter(({ inOverlap }) => inOverlap);
  // What the gas itself speaks against is told only where nothing else is to tell.
  const borne = met.filter((wave) => !isOutweighed(wave));
  const within = borne.length > 0 ? borne : met;
  if (within.length > 0) return within.reduce((a, b) => (Math.abs(b.strength) > Math.abs(a.strength) ? b : a));
  const own = there.filter(({ from, to }) => from === to);
  const off = ({ phase, arrival }: WavePath) => Math.abs(phase ?? arrival!);
  return (own.length > 0 ? own : there).reduce<WavePath | null>((a, b) => (a && off(a) <= off(b) ? a : b), null);
}
