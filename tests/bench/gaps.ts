/** The list of gaps and the gaps along the tubes after an edit of every runner: beside a scan of two million triangles, and swept. */
import { gapReport, type Meshes, resolveHeader } from '../../geometry';
import type { Design } from '../../shared/design/types';
import { scannedBay } from './bay';
import { inWords, spread } from './statistics';

const RUNS = 24;
const WARM_UP = 8;

export function benchGaps(design: Design, unit: number): string[] {
  const soup = scannedBay(design, 2_000_000, 1);
  const scanned: Design = {
    ...design,
    surroundings: [{ id: 'scan', shape: 'mesh', file: 'scan.stl', clearance: 5 }],
  };
  const motion = {
    rock: { position: [0, -270, -150], axis: [1, 0, 0], angles: [-2, 3] },
    heat: { temperature: 650 },
  } as const;
  return [
    `gaps       ${design.runners.length} runners, all edited; list and profiles, processor time`,
    ...timed(`beside a scan of ${soup.length / 9} triangles`, scanned, new Map([['scan.stl', soup]]), unit),
    ...timed('beside that scan, rolling and hot', { ...scanned, motion }, new Map([['scan.stl', soup]]), unit),
    ...timed('beside the solids of the example', design, new Map(), unit),
    ...timed('the same, rolling and hot', { ...design, motion }, new Map(), unit),
  ];
}

function timed(what: string, design: Design, meshes: Meshes, unit: number): string[] {
  let header = resolveHeader(design);
  gapReport(header, meshes);
  const times: number[] = [];
  let least = 0;
  for (let i = 0; i < WARM_UP + RUNS; i++) {
    header = resolveHeader(edited(design, i), header);
    const before = process.cpuUsage();
    const { gaps } = gapReport(header, meshes);
    const { user, system } = process.cpuUsage(before);
    if (i >= WARM_UP) times.push((user + system) / 1000);
    least = gaps[0]?.margin ?? Number.NaN;
  }
  return [`           ${what}: ${inWords(spread(times), unit)}; least margin ${least.toFixed(3)} mm`];
}

/** Every bend a millimetre elsewhere. */
const edited = (design: Design, i: number): Design => ({
  ...design,
  runners: design.runners.map((r) => ({
    ...r,
    points: r.points!.map(([x, y, z], k) =>
      k === 0 || k === r.points!.length - 1
        ? ([x, y, z] as const)
        : ([x + Math.sin(i + k), y + Math.cos(i), z] as const),
    ),
  })),
});
