/** What `check` found, for people: what fails and how to mend it first, then lengths by group, then the tightest places. */
import {
  type CheckReport,
  type Margin,
  type PartRemark,
  type Problem,
  partsNamed,
  type Windows,
} from '../../../geometry';
import type { Design, Runner } from '../../../shared/design/types';
import { columns } from './columns';
import { measuresIn } from './measures';
import { reachNotes, windowWords } from './windows';

/**
 * @param windows what lengths could be had, where that was asked
 * @param notMade of parts, where that was asked
 * @param room what is found about the space, part by part
 */
export function printReport(
  design: Design,
  report: CheckReport,
  windows?: Windows,
  notMade: readonly PartRemark[] = [],
  room: readonly string[] = [],
): string {
  return [
    title(design),
    findings(report.problems),
    missingParts(notMade),
    windows ? reachNotes(design, report, windows) : '',
    ...lengths(design, report, windows),
    clearances(design, report),
    ...room,
  ]
    .filter((part) => part !== '')
    .join('\n\n')
    .concat('\n');
}

/** A design may hold every rule and still have a part that nobody can make. */
function missingParts(notMade: readonly PartRemark[]): string {
  const { length } = partsNamed(notMade);
  if (length === 0) return '';
  return `${length === 1 ? '1 part' : `${length} parts`} cannot be made; shop says which and why.`;
}

const title = (design: Design): string => design.title ?? 'Untitled design';

export function findings(problems: readonly Problem[]): string {
  if (problems.length === 0) return 'Every rule holds.';
  const head = problems.length === 1 ? '1 finding' : `${problems.length} findings`;
  const rows = problems.flatMap((p) => [
    [p.rule, p.message],
    ['', `at ${p.where}`],
  ]);
  return `${head}\n${columns(rows, ['left', 'left'])}`;
}

function lengths(design: Design, report: CheckReport, windows?: Windows): string[] {
  const grouped = Object.keys(design.groups).map((id) => ({
    id,
    runners: design.runners.filter((r) => r.group === id),
  }));
  const alone = design.runners.filter((r) => r.group === undefined);
  return [...grouped, { id: null, runners: alone }]
    .filter(({ runners }) => runners.length > 0)
    .map(({ id, runners }) => groupTable(design, report, id, runners, windows));
}

function groupTable(
  design: Design,
  report: CheckReport,
  id: string | null,
  runners: readonly Runner[],
  windows?: Windows,
): string {
  const { length, signed, unit } = measuresIn(design.display);
  const group = id === null ? null : design.groups[id]!;
  const measured = report.groups.find((g) => g.id === id);
  const target = group ? (group.length ?? measured?.mean ?? null) : null;
  const rows = runners.map((runner) => {
    const found = report.runners.find((r) => r.id === runner.id);
    const window = windows?.runners.find((r) => r.id === runner.id);
    const reach = window ? windowWords(window, length) : '';
    if (!found) return [runner.id, 'not routed', '', '', '', reach];
    const turned = found.angles.reduce((sum, angle) => sum + angle, 0);
    const off = target === null ? '' : signed(found.length - target);
    return [runner.id, length(found.length), off, String(found.bends), `${turned.toFixed(1)}°`, reach];
  });
  const off = target === null ? '' : group?.length === null ? 'from mean' : 'from target';
  const wanted = !group ? 'In no group' : `Group ${id}, ${wantedLength(group, length)}`;
  const spread = measured ? `; spread ${length(measured.spread)}` : '';
  const shared = windows?.groups.find((g) => g.id === id);
  const reach = shared && shared.shortest !== null ? `; in reach ${windowWords(shared, length)}` : '';
  const head = ['runner', `length ${unit}`, off, 'bends', 'turned', windows ? 'could be' : ''];
  return `${wanted}${spread}${reach}\n${columns([head, ...rows], ['left', 'right', 'right', 'right', 'right', 'left'])}`;
}

function wantedLength(group: Design['groups'][string], length: (mm: number) => string): string {
  const accepted = `± ${length(group.tolerance)}`;
  return group.length === null ? `any length but equal, ${accepted}` : `${length(group.length)} ${accepted}`;
}

function clearances(design: Design, { clearance }: CheckReport): string {
  const { gap, unit } = measuresIn(design.display);
  const row = (name: string, m: Margin | null) =>
    m ? [[name, gap(m.gap), gap(m.required), gap(m.margin), m.between.join(' and ')]] : [];
  const rows = [
    ...row('tube to tube', clearance.tubeToTube),
    ...row('to surroundings', clearance.surroundings),
    ...row('collector bodies', clearance.mergeBodies),
  ];
  if (rows.length === 0) return '';
  const head = ['', 'gap', 'needed', 'to spare', 'between'];
  return `Tightest places, ${unit}\n${columns([head, ...rows], ['left', 'right', 'right', 'right', 'left'])}`;
}
