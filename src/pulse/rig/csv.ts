/**
 * What a run leaves behind as tables: the probes over time, and every cell at the last instant. SI units. Numbers are the shortest
 * that read back to the same double, with an exponent where that is shorter; lines end plainly, as programs read these rather than
 * spreadsheets. Ids and names hold nothing that would have to be quoted (paths.ts).
 */
import type { GasColumns, RigRun } from '../report';

/** `time`, then for each probe pressure, velocity, temperature, density, and the components beyond the first. */
export function probesCsv({ components, times, probes }: RigRun): string {
  const carried = components.slice(1);
  const columns = probes.flatMap(columnsOf);
  const names = ['pressure', 'velocity', 'temperature', 'density', ...carried];
  const header = ['time', ...probes.flatMap(({ pipe, x }) => names.map((name) => `${pipe}@${x}.${name}`))];
  const lines = Array.from(times, (time, row) => lineOf([String(time)], columns, row));
  return [header.join(','), ...lines, ''].join('\n');
}

/** Each cell of each pipe, from its start to its finish. */
export function profileCsv({ components, profile }: RigRun): string {
  const lines = profile.flatMap((pipe) => {
    const columns = [pipe.x, ...columnsOf(pipe)];
    return Array.from(pipe.x, (_, row) => lineOf([pipe.pipe], columns, row));
  });
  const header = ['pipe', 'x', 'pressure', 'velocity', 'temperature', 'density', ...components.slice(1)];
  return [header.join(','), ...lines, ''].join('\n');
}

const columnsOf = ({ pressure, velocity, temperature, density, fractions }: GasColumns): Float64Array[] => [
  pressure,
  velocity,
  temperature,
  density,
  ...fractions,
];

function lineOf(first: string[], columns: readonly Float64Array[], row: number): string {
  for (const column of columns) first.push(String(column[row]!));
  return first.join(',');
}

/** The profile lies beside the rows of the probes. @param path ends in `.csv` */
export const profilePath = (path: string): string => path.replace(/\.csv$/i, '.profile.csv');
