/** Two versions of a design for people: what it does to each runner first, then every field that differs. */
import type { Change, Comparison } from '../../../geometry';
import type { Display } from '../../../shared/design/types';
import { columns } from './columns';
import { measuresIn } from './measures';

const LONGEST = 60;

export function printComparison(comparison: Comparison, display: Display): string {
  if (comparison.same) return 'The two designs are the same.\n';
  const parts = [runnerTable(comparison, display), totals(comparison, display), changeTable(comparison.changes)];
  return `${parts.filter((part) => part !== '').join('\n\n')}\n`;
}

function runnerTable({ runners }: Comparison, display: Display): string {
  if (runners.length === 0) return '';
  const { length, gap, unit } = measuresIn(display);
  const rows = runners.map(({ id, before, after }) => [
    id,
    pair(before?.length, after?.length, length),
    pair(before?.bends, after?.bends, String),
    pair(before?.turned, after?.turned, (a) => `${a.toFixed(1)}°`),
    pair(before?.tightest?.margin, after?.tightest?.margin, gap),
    pair(before?.mass, after?.mass, (kg) => kg.toFixed(3)),
  ]);
  const head = ['runner', `length ${unit}`, 'bends', 'turned', 'to spare', 'mass kg'];
  return `Runners\n${columns([head, ...rows], ['left', 'right', 'right', 'right', 'right', 'right'])}`;
}

function totals({ groups, mass, findings }: Comparison, display: Display): string {
  const { length, unit } = measuresIn(display);
  const rows = [
    ...groups.map(({ id, before, after }) => [`spread of ${id}, ${unit}`, pair(before?.spread, after?.spread, length)]),
    ['mass of all tubes, kg', pair(mass.before, mass.after, (kg) => kg.toFixed(3))],
    ['findings', pair(findings.before, findings.after, String)],
  ];
  return `Altogether\n${columns(rows, ['left', 'left'])}`;
}

function changeTable(changes: readonly Change[]): string {
  const rows = changes.map(({ path, kind, before, after }) => [
    path,
    kind,
    kind === 'changed' ? change(before, after) : shown(kind === 'added' ? after : before),
  ]);
  const head = changes.length === 1 ? '1 difference' : `${changes.length} differences`;
  return `${head}\n${columns(rows, ['left', 'left', 'left'])}`;
}

/** One value where both print alike. */
function pair(before: number | null | undefined, after: number | null | undefined, as: (x: number) => string): string {
  const show = (x: number | null | undefined): string => (x === null || x === undefined ? '–' : as(x));
  return show(before) === show(after) ? show(after) : `${show(before)} → ${show(after)}`;
}

const shown = (value: unknown): string => inFull(value, rounded);

/** Two values that rounding would make alike differ all the same: those are printed in full. */
function change(before: unknown, after: unknown): string {
  const as = shown(before) === shown(after) ? inFull : shown;
  return `${as(before)} → ${as(after)}`;
}

function inFull(value: unknown, replacer?: typeof rounded): string {
  const text = words(value, replacer);
  return text.length > LONGEST ? `${text.slice(0, LONGEST)}…` : text;
}

/** What came or went whole is told by its fields, without the signs that a file needs. */
function words(value: unknown, replacer?: typeof rounded): string {
  if (value === null || typeof value !== 'object' || Array.isArray(value)) return JSON.stringify(value, replacer);
  const fields = Object.entries(value).filter(([name]) => name !== 'id');
  return fields
    .map(([name, field]) => {
      const nested = field !== null && typeof field === 'object' && !Array.isArray(field);
      return `${name} ${nested ? `(${words(field, replacer)})` : words(field, replacer)}`;
    })
    .join(', ');
}

/** To a thousandth: nobody reads a millimetre or a degree finer. */
const rounded = (_: string, value: unknown): unknown => (typeof value === 'number' ? Number(value.toFixed(3)) : value);
