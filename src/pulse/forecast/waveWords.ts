/** What a wave's path means, in one sentence for the user, and which wave to speak of first. Crank degrees, rpm. */
import type { EngineSetup } from '../engine/types';
import type { GasPath } from '../path/types';
import { valveTimes } from './gasExchange';
import { flowsBack, type OverlapMeans } from './waveOverlap';
import type { PathRun, WavePath } from './wavePath';
import type { WaveStep } from './waveSteps';

export const degreesText = (angle: number): string =>
  `${Math.round(angle) === 0 ? 0 : Math.round(angle)}°`.replace('-', '−');

/** "the collector": where it was sent back, or where another's way joins. */
export function placeWords(path: GasPath, { turn }: Pick<WavePath, 'turn'>): string {
  const role = (id: string | null) => path.pipes.find((pipe) => pipe.id === id)?.role;
  if (turn.kind === 'mouth' || turn.kind === 'through') {
    const own = role(turn.pipe);
    return own === 'tailpipe' || own === 'collector' ? `the ${own}’s mouth` : 'the pipe’s mouth';
  }
  if (turn.kind === 'closed') return 'the closed end';
  switch (role(turn.onward)) {
    case 'collector':
      return collectorWords(path, turn.onward!);
    case 'secondary':
      return 'the secondary';
    case 'tailpipe':
      return 'the tailpipe';
    case 'shared':
      return 'the shared pipe';
    default:
      return turn.kind === 'restriction' ? 'the plate' : 'the junction';
  }
}

/** By its name where there are several. */
function collectorWords({ pipes }: GasPath, id: string): string {
  const several = pipes.filter(({ role }) => role === 'collector').length > 1;
  if (!several || id.toLowerCase() === 'collector') return 'the collector';
  return `the collector “${id}”`;
}

/** "suction", "pressure": what arrives, by areas alone. */
export const kindWords = ({ strength }: Pick<WavePath, 'strength'>): string => (strength < 0 ? 'suction' : 'pressure');

/**
 * "The suction that comes back from the collector reaches the valve at −14°, within the overlap (−18° to 14°)." What it does there
 * follows where it comes within it, and claims no flow that was not measured. What the way leaves out is told behind it.
 */
export const waveWords = (
  run: Pick<PathRun, 'engine' | 'path'>,
  wave: WavePath,
  means: OverlapMeans | null = null,
): string => [reachWords(run, wave, means), ...leftOutWords(run.path, wave)].join(' ');

/** A way begins at one port, whichever comes first. */
function leftOutWords({ valves }: GasPath, { from }: WavePath): string[] {
  const ports = valves.filter(({ cylinder }) => cylinder === from).length;
  return ports > 1 ? [`Cylinder ${from} has ${ports} ports: this is the way of the first.`] : [];
}

function reachWords(run: Pick<PathRun, 'engine' | 'path'>, wave: WavePath, means: OverlapMeans | null): string {
  const subject = subjectWords(run.path, wave);
  if (wave.arrival === null)
    return `${subject} never reaches the valve: on its way the gas streams out as fast as sound.`;
  const { overlap } = valveTimes(run.engine);
  const reach = `${subject} reaches the valve at ${degreesText(wave.arrival)}`;
  if (!overlap) return `${reach}; the valves have no overlap.`;
  const range = `(${overlap.map(degreesText).join(' to ')})`;
  if (wave.inOverlap) return `${reach}, within the overlap ${range}: ${effectWords(wave, means)}.`;
  const early = wave.arrival < overlap[0];
  const off = Math.max(1, Math.round(early ? overlap[0] - wave.arrival : wave.arrival - overlap[1]));
  return `${reach}, ${off}° ${early ? 'before' : 'after'} the overlap ${range}${tunedWords(run.engine, wave)}.`;
}

function subjectWords(path: GasPath, wave: WavePath): string {
  const kind = kindWords(wave);
  const place = placeWords(path, wave);
  if (wave.from !== wave.to) return `The ${kind} of cylinder ${wave.from} that comes across at ${place}`;
  return `The ${kind} that comes back from ${place}${wave.turn.plate ? ' through its silencer' : ''}`;
}

/** "A step of pressure comes from the collector to the valve at 15°: what runs toward it rises by 16 kPa." */
export const stepWords = (path: GasPath, { angle, rise, turn }: WaveStep): string =>
  `A step of pressure comes from ${placeWords(path, { turn })} to the valve at ${degreesText(angle)}: what runs toward it rises by ${(rise / 1000).toFixed(0)} kPa.`;

/** Below this, nothing is made of what else runs toward the valve, Pa. */
const FAINT = 1000;

/** Whether what really runs toward the valve then is of the other kind: stronger waves come at once. */
export const isOutweighed = ({ carried, strength }: Pick<WavePath, 'carried' | 'strength'>): boolean =>
  carried !== null && Math.abs(carried) > FAINT && carried < 0 !== strength < 0;

function effectWords(wave: WavePath, means: OverlapMeans | null): string {
  if (isOutweighed(wave)) {
    const off = (Math.abs(wave.carried!) / 1000).toFixed(0);
    const side = wave.carried! < 0 ? 'below' : 'above';
    return `stronger waves outweigh it, all that comes to the valve then is ${off} kPa ${side} its mean`;
  }
  if (wave.strength < 0)
    return means && flowsBack(means)
      ? 'some gas flows the wrong way all the same'
      : 'it helps to draw burnt gas out of the cylinder';
  if (!means) return 'it holds up the burnt gas that leaves the cylinder';
  return flowsBack(means)
    ? 'it helps to push gas back'
    : 'it holds up the burnt gas, more of which leaves the cylinder all the same';
}

/** Pa off its mean over the cycle before the pressure in the overlap counts as low or high. */
const CLEAR = 1000;
/** Waves that come within so many degrees of the overlap are still felt in it: pulses are about twice as long. Our own choice. */
const FELT = 45;

/** Whether it is of the kind that the exhaust port shows in the overlap, and comes near enough to have part in it. */
export function hasPart(run: Pick<PathRun, 'engine'>, wave: WavePath, means: OverlapMeans | null): boolean {
  if (!means || Math.abs(means.offMean) < CLEAR || wave.arrival === null || isOutweighed(wave)) return false;
  return means.offMean < 0 === wave.strength < 0 && off(run, wave) < FELT;
}

/** Degrees from its arrival to the overlap; 0 within it. */
function off({ engine }: Pick<PathRun, 'engine'>, { arrival }: WavePath): number {
  const { overlap } = valveTimes(engine);
  return overlap && arrival !== null ? Math.max(0, overlap[0] - arrival, arrival - overlap[1]) : Infinity;
}

/**
 * The one to speak of first: of those that have part in what the port shows in the overlap, the strongest, by less the farther off it comes.
 * Where none has: the strongest within the overlap; else the own one that comes nearest to it.
 */
export function foremost(
  run: Pick<PathRun, 'engine'>,
  waves: readonly WavePath[],
  means: OverlapMeans | null,
): WavePath | null {
  const there = waves.filter(({ arrival }) => arrival !== null);
  const weight = (wave: WavePath) => Math.abs(wave.strength) * (1 - off(run, wave) / FELT);
  const parted = there.filter((wave) => hasPart(run, wave, means));
  if (parted.length > 0) return parted.reduce((a, b) => (weight(b) > weight(a) ? b : a));
  const met = there.filter(({ inOverlap }) => inOverlap);
  // What the gas itself speaks against is told only where nothing else is to tell.
  const borne = met.filter((wave) => !isOutweighed(wave));
  const within = borne.length > 0 ? borne : met;
  if (within.length > 0) return within.reduce((a, b) => (Math.abs(b.strength) > Math.abs(a.strength) ? b : a));
  const own = there.filter(({ from, to }) => from === to);
  const far = ({ phase, arrival }: WavePath) => Math.abs(phase ?? arrival!);
  return (own.length > 0 ? own : there).reduce<WavePath | null>((a, b) => (a && far(a) <= far(b) ? a : b), null);
}

/** Only where that speed is near and within what the engine runs at. */
function tunedWords({ speeds }: EngineSetup, { tunedRpm }: WavePath): string {
  if (tunedRpm === null || tunedRpm < speeds[0] || tunedRpm > speeds[1]) return '';
  return `; at about ${Math.round(tunedRpm / 50) * 50} rpm it would meet its middle`;
}
