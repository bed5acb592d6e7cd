/** What a wave's path means, in one sentence for the user. Crank degrees, rpm. */
import type { EngineSetup } from '../engine/types';
import type { GasPath } from '../path/types';
import { valveTimes } from './gasExchange';
import type { PathRun, WavePath } from './wavePath';

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
 * follows where it comes within it. What the way by areas alone leaves out is told behind it.
 */
export const waveWords = (run: Pick<PathRun, 'engine' | 'path'>, wave: WavePath): string =>
  [reachWords(run, wave), ...leftOutWords(run.path, wave)].join(' ');

/** A silencer stands as a plate over the mouth, and areas take every mouth as bare; a way begins at one port, whichever comes first. */
function leftOutWords({ ends, valves }: GasPath, { turn, from }: WavePath): string[] {
  const mouth = ends.find((end) => end.kind === 'open' && end.at[0] === turn.pipe && end.at[1] === 'finish');
  const isPlated = turn.kind === 'mouth' && mouth?.kind === 'open' && mouth.area !== undefined;
  const ports = valves.filter(({ cylinder }) => cylinder === from).length;
  return [
    ...(isPlated ? ['The silencer is left out of this: less comes back from a mouth that it throttles.'] : []),
    ...(ports > 1 ? [`Cylinder ${from} has ${ports} ports: this is the way of the first.`] : []),
  ];
}

function reachWords(run: Pick<PathRun, 'engine' | 'path'>, wave: WavePath): string {
  const subject = subjectWords(run.path, wave);
  if (wave.arrival === null)
    return `${subject} never reaches the valve: on its way the gas streams out as fast as sound.`;
  const { overlap } = valveTimes(run.engine);
  const reach = `${subject} reaches the valve at ${degreesText(wave.arrival)}`;
  if (!overlap) return `${reach}; the valves have no overlap.`;
  const range = `(${overlap.map(degreesText).join(' to ')})`;
  if (wave.inOverlap) return `${reach}, within the overlap ${range}: ${effectWords(wave)}.`;
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

/** Below this, nothing is made of what else runs toward the valve, Pa. */
const FAINT = 1000;

/** Whether what really runs toward the valve then is of the other kind: stronger waves come at once. */
export const isOutweighed = ({ carried, strength }: Pick<WavePath, 'carried' | 'strength'>): boolean =>
  carried !== null && Math.abs(carried) > FAINT && carried < 0 !== strength < 0;

function effectWords(wave: WavePath): string {
  if (isOutweighed(wave)) {
    const off = (Math.abs(wave.carried!) / 1000).toFixed(0);
    const side = wave.carried! < 0 ? 'below' : 'above';
    return `stronger waves outweigh it, all that comes to the valve then is ${off} kPa ${side} its mean`;
  }
  return wave.strength < 0
    ? 'it helps to draw burnt gas out of the cylinder'
    : 'it pushes burnt gas back into the cylinder';
}

/** Only where that speed is near and within what the engine runs at. */
function tunedWords({ speeds }: EngineSetup, { tunedRpm }: WavePath): string {
  if (tunedRpm === null || tunedRpm < speeds[0] || tunedRpm > speeds[1]) return '';
  return `; at about ${Math.round(tunedRpm / 50) * 50} rpm it would meet its middle`;
}
