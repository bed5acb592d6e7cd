/**
 * The runners a shop can make: routed, their bends fitting, the tube able to take them. The others are named with the
 * reason, so that no table shows half a tube. mm; bend rows in degrees.
 */
import {
  type BendTable,
  bendTable,
  type Centerline,
  cutObstacle,
  type Header,
  type ResolvedRunner,
  startTrim,
} from '../../geometry';

export type Part = {
  readonly id: string;
  readonly resolved: ResolvedRunner;
  readonly line: Centerline;
  readonly table: BendTable;
  /** How much farther in (positive) or out (negative) than its centerline the tube begins: a flange's step, a transition. */
  readonly startTrim: number;
};

/** Something of the contract that is not in the folder, or only in part. */
export type NotMade = { readonly name: string; readonly why: string };

export function partsOf(header: Header): { parts: Part[]; leftOut: NotMade[] } {
  const parts: Part[] = [];
  const leftOut: NotMade[] = [];
  for (const resolved of header.runners) {
    const { id } = resolved.runner;
    const line = resolved.centerline;
    const obstacle = cutObstacle(header, resolved);
    if (line && !obstacle) {
      const table = bendTable(line, resolved.start.up);
      parts.push({ id, resolved, line, table, startTrim: startTrim(header, resolved) });
    } else leftOut.push({ name: `runner ${id}`, why: `In no table and no file, because ${obstacle}.` });
  }
  return { parts, leftOut };
}
