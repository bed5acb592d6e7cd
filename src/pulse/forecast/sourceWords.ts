/** What the pressure at an exhaust valve in the overlap comes from, in sentences for the user; and what tells two exhausts apart. kPa, degrees. */
import { valveTimes } from './gasExchange';
import { type OverlapMeans, overlapMeans, overlapWords } from './waveOverlap';
import { type PathRun, wavePaths } from './wavePath';
import { routeOf } from './waveRoute';
import type { OverlapSources, SourcePart } from './waveSources';
import { degreesText, placeWords } from './waveWords';

/** Pa: less is as good as nothing. */
const FAINT = 1500;
/** Of what lowers it (or raises it): smaller shares are not told by name; nor what runs against it, of that. */
const NAMED = 0.15;
const AGAINST = 0.3;

const kilo = (pascal: number): string => `${Math.abs(pascal / 1000).toFixed(0)} kPa`;
const sum = (values: readonly number[]): number => values.reduce((all, value) => all + value, 0);
/** How a part came: straight from another's pipe, back from a joint or a taper, or back from the open air. */
type Manner = 'across' | 'joint' | 'mouth';

function mannerOf({ path }: Pick<PathRun, 'path'>, cylinder: number, { from, turn, taper }: SourcePart): Manner {
  if (taper) return 'joint';
  if (turn.kind === 'mouth') return 'mouth';
  if (from === cylinder) return 'joint';
  const passed = new Set(routeOf(path, from).turns.map(({ onward }) => onward));
  const met = routeOf(path, cylinder).turns.find(({ onward }) => onward !== null && passed.has(onward));
  return met?.pipe === turn.pipe ? 'across' : 'joint';
}

/** "cylinder 3’s pulse, which comes across at the shared pipe as pressure". */
function partWords(run: Pick<PathRun, 'engine' | 'path'>, cylinder: number, part: SourcePart): string {
  const isAcross = mannerOf(run, cylinder, part) === 'across';
  const way = isAcross
    ? `which comes across at ${placeWords(run.path, part)}`
    : `sent back from ${backWords(run, part)}`;
  return `${pulseWords(cylinder, part)}, ${way} as ${part.pressure < 0 ? 'suction' : 'pressure'}`;
}

/** " (it left about 38° after that valve opened)": a mean, for what makes the overlap left over some time. */
function leftWords({ engine }: Pick<PathRun, 'engine'>, cylinder: number, { from, left }: SourcePart): string {
  const opened = left - valveTimes(engine).exhaustOpens;
  return ` (it left about ${degreesText(opened)} after ${from === cylinder ? 'the' : 'that'} valve opened)`;
}

function pulseWords(cylinder: number, { from, sent }: SourcePart): string {
  const whose = from === cylinder ? 'its own' : `cylinder ${from}’s`;
  return sent >= 0 ? `${whose} pulse` : `the lull behind ${whose} pulse`;
}

/** "cylinder 3’s pulse across at the shared pipe": for a list. */
export function originWords(run: Pick<PathRun, 'engine' | 'path'>, cylinder: number, part: SourcePart): string {
  const isAcross = mannerOf(run, cylinder, part) === 'across';
  const way = isAcross ? `across at ${placeWords(run.path, part)}` : `back from ${backWords(run, part)}`;
  return `${pulseWords(cylinder, part)} ${way}`;
}

function backWords({ path }: Pick<PathRun, 'path'>, part: SourcePart): string {
  if (!part.taper) return placeWords(path, part);
  const role = path.pipes.find(({ id }) => id === part.turn.pipe)?.role;
  if (role === 'collector') return 'the collector’s cone';
  return role === 'primary' || role === 'branch' ? 'where its own pipe widens' : 'where the pipe’s bore changes';
}

/**
 * "In the overlap the waves that come to the exhaust valve lower its pressure by 31 kPa. What lowers it: 62 % (24 kPa) its own pulse, …". Says how
 * much could be traced, and claims nothing of the rest.
 */
export function sourcesWords(
  run: Pick<PathRun, 'engine' | 'path'>,
  cylinder: number,
  sources: OverlapSources,
  means: OverlapMeans | null = null,
): string {
  const { toward, parts } = sources;
  const isFaint = Math.abs(toward) < FAINT;
  const below = toward < 0;
  const [does, undoes] = below ? ['lower', 'raise'] : ['raise', 'lower'];
  const come = 'In the overlap the waves that come to the exhaust valve';
  const lead = isFaint
    ? `${come} are within ${kilo(FAINT + 500)} of their mean`
    : `${come} ${does} its pressure by ${kilo(toward)}${feltWords(toward, means)}`;
  const loose = [sources.rest, sources.small];
  const pulling = sum(
    [...parts.map(({ pressure }) => pressure), ...loose].filter((pressure) => pressure < 0 === below),
  );
  const pushing = toward - pulling;
  const withIt = parts.filter(({ pressure }) => pressure < 0 === below);
  const named = withIt.filter(({ pressure }) => pressure / pulling >= NAMED).slice(0, 3);
  const counter = parts.find(({ pressure }) => pressure < 0 !== below);
  const share = ({ pressure }: SourcePart) => Math.round((100 * pressure) / pulling);
  const told = named.map(
    (part, k) =>
      `${share(part)} % (${kilo(part.pressure)}) ${partWords(run, cylinder, part)}${k > 0 ? '' : leftWords(run, cylinder, part)}`,
  );
  const words = [`${lead}.`];
  if (Math.abs(pulling) > FAINT)
    words.push(
      told.length > 0
        ? `What ${does}s it: ${told.join('; ')}.`
        : `Many small waves ${does} it: none is more than ${Math.round(100 * NAMED)} % of it.`,
    );
  if (counter && Math.abs(pushing) > AGAINST * Math.abs(pulling) && Math.abs(counter.pressure) > FAINT) {
    const much = counter.pressure > 0.5 * pushing === pushing > 0 ? 'most of it' : 'the largest part';
    words.push(`What ${undoes}s it: ${kilo(pushing)}, ${much} ${partWords(run, cylinder, counter)}.`);
  }
  const open = sum(loose.map(Math.abs)) / (Math.abs(pulling) + Math.abs(pushing));
  if (open > NAMED) words.push(`${Math.round(100 * open)} % of all this could not be traced.`);
  return words.join(' ');
}

/**
 * A valve that is nearly shut sends back what comes: the port has both, up to twice as much. What is beyond, or the other way, is the
 * cylinder's own doing.
 */
function feltWords(toward: number, means: OverlapMeans | null): string {
  if (!means) return '';
  const { offMean } = means;
  const below = offMean < 0;
  const own = `the cylinder sends out ${below ? 'less' : 'more'} then than on average`;
  const port = `the port is ${kilo(offMean)} ${below ? 'below' : 'above'} its mean`;
  if (below !== toward < 0) return Math.abs(offMean) < FAINT ? '' : `; ${port} all the same: ${own}`;
  const times = offMean / toward;
  if (times < 1.2) return '';
  return times < 2.2 ? `; the valve, nearly shut, sends them back, so ${port}` : `; ${port}: ${own}`;
}

export type SourcedRun = PathRun & { readonly name: string; readonly sources: OverlapSources };

/**
 * "What sets the two apart most: cylinder 3’s pulse, straight across, raises the pressure by 29 kPa on “cast manifold” and hardly changes it on
 * “header”, where its peak comes at 44°, after the overlap." Of what makes the one higher than the other, where one is. Empty where nothing differs clearly.
 */
export function differenceWords(one: SourcedRun, other: SourcedRun, cylinder: number): string {
  const wayIn = (run: SourcedRun) => (part: SourcePart) => `${part.from} ${mannerOf(run, cylinder, part)}`;
  const of = (run: SourcedRun, way: string) =>
    sum(run.sources.parts.filter((part) => wayIn(run)(part) === way).map(({ pressure }) => pressure));
  const all = one.sources.toward - other.sources.toward;
  const names = [one, other].flatMap((run) => run.sources.parts.map(wayIn(run)));
  const ways = [...new Set(names)].map((way) => ({ way, by: of(one, way) - of(other, way) }));
  const apt = Math.abs(all) < 2 * FAINT ? ways : ways.filter(({ by }) => by < 0 === all < 0);
  const [first] = apt.sort((a, b) => Math.abs(b.by) - Math.abs(a.by));
  if (!first || Math.abs(first.by) < 2 * FAINT) return '';
  const { way } = first;
  const [strong, weak] = Math.abs(of(one, way)) >= Math.abs(of(other, way)) ? [one, other] : [other, one];
  const part = strong.sources.parts.find((each) => wayIn(strong)(each) === way)!;
  const manner = mannerOf(strong, cylinder, part);
  const own = part.from === cylinder ? 'own ' : '';
  const back = { across: 'straight across', joint: 'back from the joints', mouth: 'back from the open air' }[manner];
  const late = manner === 'across' ? arrivalWords(weak, cylinder, part.from) : '';
  return `What sets the two apart most: cylinder ${part.from}’s ${own}pulse, ${back}, ${effect(strong, of(strong, way), 'the pressure')} and ${effect(weak, of(weak, way), 'it')}${late}.`;
}

function effect({ name }: SourcedRun, pressure: number, what: string): string {
  if (Math.abs(pressure) < FAINT) return `hardly changes ${what} on “${name}”`;
  return `${pressure < 0 ? 'lowers' : 'raises'} ${what} by ${kilo(pressure)} on “${name}”`;
}

/** When a pulse that comes across is there, if not in the overlap. */
function arrivalWords(run: SourcedRun, cylinder: number, from: number): string {
  const { overlap } = valveTimes(run.engine);
  const arrival = wavePaths(run, cylinder).find((wave) => wave.from === from)?.arrival ?? null;
  if (!overlap || arrival === null || (arrival >= overlap[0] && arrival <= overlap[1])) return '';
  return `, where its peak comes at ${degreesText(arrival)}, ${arrival < overlap[0] ? 'before' : 'after'} the overlap`;
}

/** `name`: of the run that is spoken of; null where it is of all of them. */
export type Told = { readonly name: string | null; readonly words: string };

/** What was measured in the overlap and what tells the first two apart; then of each run what makes it, where that is known. */
export function overlapTold(
  runs: readonly (PathRun & { readonly name: string; readonly sources: OverlapSources | null })[],
  cylinder: number,
): { readonly measured: string; readonly difference: string; readonly each: readonly Told[] } {
  const sourced = runs.flatMap((run): SourcedRun[] => (run.sources ? [{ ...run, sources: run.sources }] : []));
  const [one, other] = sourced;
  return {
    measured: overlapWords(runs, cylinder),
    difference: one && other ? differenceWords(one, other, cylinder) : '',
    each: sourced.map((run) => ({
      name: run.name,
      words: sourcesWords(run, cylinder, run.sources, overlapMeans(run, cylinder)),
    })),
  };
}
