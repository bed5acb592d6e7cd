/** What is said of splits that a runner cannot have, of bends beyond the machine and of test bends that contradict each other. */
import { type BendRow, LENGTH_TOLERANCE } from '../../../../geometry';
import type { Tooling } from '../../../../shared/design/types';
import type { WorkshopDefaults } from '../../../../shared/stock/workshop';
import { list } from '../../list';
import type { MachineRow, Remark } from '../report';
import type { Springback } from './springback';
import { degrees, type Say } from './words';

/** Angles are compared as a bender's scale can be read, as the rule on bend angles does. */
const ANGLE_READING = 0.01;
/** Degrees; tube gives back a few in ninety. From memory. */
const MOST_SPRINGBACK = 45;
type Splits = {
  readonly runner: string;
  /** Rising. */
  readonly asked: readonly number[];
  readonly rows: readonly BendRow[];
  readonly welds: Pick<WorkshopDefaults, 'weldSetback' | 'weldGap' | 'weldShrinkage'>;
};

export function splitRemarks({ runner, asked, rows, welds }: Splits, say: Say): Remark[] {
  const { weldSetback, weldGap, weldShrinkage } = welds;
  const where = `runners/${runner}/splits`;
  const bends = rows.length - 1;
  const remarks = asked.flatMap((bend): Remark[] => {
    if (bend < 2 || bend > bends) {
      const has = `it has ${bends === 0 ? 'no bend' : bends === 1 ? '1 bend' : `${bends} bends`}`;
      const remedy = bends < 2 ? 'take the split out' : `name ${bends === 2 ? 'bend 2' : `a bend from 2 to ${bends}`}`;
      const message = `${runner} is split before bend ${bend}, and ${has}: ${remedy}. It is made without this split.`;
      return [{ where, message, stops: false }];
    }
    const half = rows[bend - 1]!.length / 2;
    if (half >= weldSetback - LENGTH_TOLERANCE) return [];
    const message =
      `${runner}'s split before bend ${bend} is welded ${say(half)} from the bends at either side, nearer than ${say(weldSetback)}: ` +
      `make the straight there ${say(2 * (weldSetback - half))} longer, or split elsewhere.`;
    return [{ where, message, stops: false }];
  });
  const drawn = weldShrinkage - weldGap;
  if (drawn === 0 || !asked.some((bend) => bend >= 2 && bend <= bends)) return remarks;
  const message =
    `The ends of ${runner} that are welded at a split are marked in its middle, and the weld takes ${say(weldShrinkage)} and its gap gives ${say(weldGap)}: ` +
    `trim each ${say(Math.abs(drawn) / 2)} ${drawn > 0 ? 'beyond' : 'before'} its mark.`;
  return [...remarks, { where, message, stops: false }];
}

export function bendRemarks(
  { tube, id, firstBend }: { readonly tube: string; readonly id: string; readonly firstBend: number },
  rows: readonly MachineRow[],
  { maxBendAngle, bender }: Pick<Tooling, 'maxBendAngle' | 'bender'>,
  say: Say,
): Remark[] {
  const where = `tooling/${tube}`;
  return rows.flatMap((row, i): Remark[] => {
    const bend = firstBend + i;
    const remarks: Remark[] = [];
    if (row.angle > maxBendAngle + ANGLE_READING) {
      const message = `${id}, bend ${bend} turns ${degrees(row.angle)}; the tooling makes at most ${degrees(maxBendAngle)}: share the turn with another bend, or weld it up.`;
      remarks.push({ where: `${where}/maxBendAngle`, message, stops: true });
    } else if (row.set > maxBendAngle + ANGLE_READING && row.set - row.angle <= MOST_SPRINGBACK) {
      const message = `${id}, bend ${bend} is set to ${degrees(row.set)} so that ${degrees(row.angle)} is left; the tooling makes at most ${degrees(maxBendAngle)}: see that the machine turns so far, or share the turn with another bend.`;
      remarks.push({ where: `${where}/bender/testBends`, message, stops: false });
    }
    if (row.set - row.angle > MOST_SPRINGBACK) {
      const message = `${id}, bend ${bend} would have to be set to ${degrees(row.set)} for ${degrees(row.angle)} to be left, and no tube springs back by ${degrees(row.set - row.angle)}: the test bends lie too near each other to tell beyond them; bend one of ${degrees(row.angle)} or more, and leave out those that differ by less than they can be read to.`;
      remarks.push({ where: `${where}/bender/testBends`, message, stops: true });
    }
    if (row.feed < -LENGTH_TOLERANCE) {
      const before = rows[i - 1]!;
      const message =
        `${id}: bend ${bend - 1} (${degrees(before.angle)}) comes out longer by more than the ${say(row.length)} of straight behind it, with a stretch of ${bender?.stretch ?? 0} %: ` +
        `the carriage goes back by ${say(-row.feed)}. Make that straight longer, or measure the stretch again.`;
      remarks.push({ where: `${where}/bender/stretch`, message, stops: false });
    }
    return remarks;
  });
}

export const testBendRemarks = (tube: string, { contradictions }: Springback): Remark[] =>
  contradictions.length === 0
    ? []
    : [
        {
          where: `tooling/${tube}/bender/testBends`,
          message: `The test bends contradict each other: ${list(
            contradictions.map(
              ([one, other]) =>
                `set to ${degrees(one[0])} it measured ${degrees(one[1])}, set to ${degrees(other[0])} no more, ${degrees(other[1])}`,
            ),
          )}. Until they are bent and measured again, both count as their mean.`,
          stops: false,
        },
      ];
