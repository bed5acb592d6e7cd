/**
 * What becomes of a header after an edit by number or choice: as it is where every rule still holds; else balanced; else,
 * where only a group's length is out of reach, at the nearest length that can be had; else as it was asked for.
 */
import type { Design } from '../../shared/design/types';
import { check } from '../check/check';
import type { Meshes } from '../check/meshes';
import type { CheckReport } from '../check/report';
import { roomForTools } from '../reach/keepOuts';
import { balance, balancePoints, type Limit } from './balance';

export type Settled = {
  readonly design: Design;
  readonly report: CheckReport;
  /** The rules that stop a length that was asked for; empty where all was had. */
  readonly limits: readonly Limit[];
};

/** Starting points that are tried before an edit is left as it is. */
const RESTARTS = 4;

export function settleEdit(asked: Design, meshes: Meshes = new Map()): Settled {
  const given = { design: asked, report: check(asked, meshes), limits: [] };
  if (given.report.ok) return given;
  const { design } = balancePoints(asked, meshes, { restarts: 0 }, roomForTools);
  const report = check(design, meshes);
  if (report.ok) return { design, report, limits: [] };
  const found = balance(asked, meshes, { restarts: RESTARTS });
  const lengthsOnly = found.report.problems.every((p) => p.rule === 'balance');
  return lengthsOnly ? { design: found.design, report: found.report, limits: found.limits } : given;
}
