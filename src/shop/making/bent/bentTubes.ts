/**
 * A runner as a rotary draw bender makes it: one tube, or several where it is split, each with its rows from both ends, what can be
 * clamped, how thin the walls get and what rounding costs. Of the real tube, which may begin before or after the centerline
 * does. mm, degrees.
 */
import type { BendRow, Header } from '../../../../geometry';
import type { Tooling } from '../../../../shared/design/types';
import { settingsOf } from '../../../../shared/stock/workshop';
import type { Part } from '../../part';
import type { BentTube, Remark } from '../report';
import { type BenderSettings, benderOf } from './bender';
import { type Blank, blanksOf } from './blanks';
import { clamping, gripsOf } from './clamping';
import { clampRemarks } from './clampRemarks';
import { machineRows, reversedRows } from './machineRows';
import { bendRemarks, splitRemarks, testBendRemarks } from './remarks';
import { roundedTube } from './rounding';
import { thinned } from './thinning';
import { type Say, sayIn } from './words';

type Making = {
  readonly part: Part;
  readonly bender: BenderSettings;
  readonly settings: ReturnType<typeof settingsOf>;
  readonly say: Say;
};

export function bentTubes(header: Header, part: Part): BentTube[] {
  const { design } = header;
  const { runner, tooling } = part.resolved;
  const settings = settingsOf(design.workshop);
  const bender = benderOf(tooling, settings);
  const say = sayIn(design.display);
  const rows = realRows(part);
  const asked = [...new Set(runner.splits ?? [])].sort((a, b) => a - b);
  const splits = asked.filter((bend) => bend >= 2 && bend < rows.length);
  const whole = {
    id: part.id,
    from: 0 - part.startTrim,
    to: part.line.length,
    clocking: part.table.clocking,
    rows,
    trimStart: tooling.trimStart ?? 0,
    trimEnd: tooling.trimEnd ?? 0,
  };
  const isTaken = (id: string): boolean => design.runners.some((r) => r.id.toLowerCase() === id.toLowerCase());
  const drawn = settings.weldShrinkage - settings.weldGap;
  const tubes = blanksOf(whole, splits, { ...bender, drawn }, isTaken).map((blank) =>
    bentTube(blank, { part, bender, settings, say }),
  );
  const about = splitRemarks({ runner: runner.id, asked, rows, welds: settings }, say);
  const [first, ...others] = tubes;
  return [{ ...first!, remarks: [...about, ...first!.remarks] }, ...others];
}

/** The table's rows with the first straight as it is on the tube. */
function realRows({ table, startTrim }: Part): BendRow[] {
  const [first, ...others] = table.rows;
  return [{ ...first!, length: first!.length + startTrim }, ...others];
}

function bentTube(blank: Blank, { part, bender, settings, say }: Making): BentTube {
  const { id, from, to, firstBend, rows, trimStart, trimEnd } = blank;
  const { runner, tube, tooling } = part.resolved;
  const trims = { ahead: trimStart, behind: trimEnd };
  const trimsBack = { ahead: trimEnd, behind: trimStart };
  const fromStart = machineRows(rows, trims, bender);
  const fromEnd = machineRows(reversedRows(rows), trimsBack, bender);
  const judged = clamping(fromStart, fromEnd, bender);
  const made =
    judged.fromStart || !judged.fromEnd
      ? { rows: fromStart, trims, fromEnd: false }
      : { rows: fromEnd, trims: trimsBack, fromEnd: true };
  const about = { runner: runner.id, tube: runner.tube, id, firstBend };
  return {
    id,
    runner: runner.id,
    tube: runner.tube,
    from,
    to,
    cutLength: fromStart.at(-1)!.markEnd,
    trimStart,
    trimEnd,
    fromStart,
    fromEnd,
    clampable: { fromStart: judged.fromStart, fromEnd: judged.fromEnd },
    offered: judged.offered.map((bend) => bend + firstBend - 1),
    clocking: blank.clocking,
    thinned: rows.slice(0, -1).map((row, i) => thinned(row, firstBend + i, tube, settings.thinning)),
    rounded: roundedTube(made, bender, settings),
    remarks: remarksOf(about, { fromStart, judged, tooling, bender }, say),
  };
}

function remarksOf(
  about: { runner: string; tube: string; id: string; firstBend: number },
  {
    fromStart,
    judged,
    tooling,
    bender,
  }: {
    readonly fromStart: BentTube['fromStart'];
    readonly judged: ReturnType<typeof clamping>;
    readonly tooling: Tooling;
    readonly bender: BenderSettings;
  },
  say: Say,
): Remark[] {
  return [
    ...clampRemarks({ ...about, grips: gripsOf(fromStart), clamping: judged, bender }, say),
    ...bendRemarks(about, fromStart, tooling, say),
    ...testBendRemarks(about.tube, bender.springback),
  ];
}
