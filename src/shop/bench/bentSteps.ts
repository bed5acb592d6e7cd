/** A runner that is bent, tube by tube where it is split: cut, marked, bent from the end that can be clamped, joined, checked. */
import type { Header } from '../../../geometry';
import { settingsOf } from '../../../shared/stock/workshop';
import { aroundTube } from '../arcs';
import { bendNumbers } from '../making/bent/numbers';
import type { BentTube, MachineRow, Making } from '../making/report';
import { checkSteps } from './checkSteps';
import type { Drawing, Step } from './step';
import type { Units } from './units';
import { cutsOf, looking, placeOf, purging, stockWords } from './weldedSteps';

export function bentSteps(making: Making, header: Header, runner: string, units: Units): Step[] {
  const tubes = making.bent.filter((tube) => tube.runner === runner);
  const cuts = cutsOf(making);
  const made = tubes.flatMap((tube) => {
    const cut = cuts.get(tube.id);
    return [
      sawing(tube, cut ? stockWords(cut) : null, units),
      ...bending(header, tube, units),
      ...trimming(tube, units),
    ];
  });
  const joins = tubes
    .slice(1)
    .map((tube, i) => joining(tubes[i]!, tube, header.design.tubes[tube.tube]?.outsideDiameter ?? 0, units));
  const welds = tubes.slice(1).map((tube, i) => welding(tubes[i]!, tube));
  return [
    ...made,
    ...clocking(header, tubes[0], units),
    ...joins,
    ...checkSteps(making, header, runner, units),
    ...(tubes[0] ? purging(header, tubes[0], welds) : []),
    ...welds,
    looking(header, runner, units),
  ];
}

/** From which end a tube is bent: where all can be clamped from its start, from there. */
export const endOf = ({ clampable }: Pick<BentTube, 'clampable'>): 'start' | 'end' =>
  clampable.fromStart || !clampable.fromEnd ? 'start' : 'end';

/** Bends only: the last row is the straight that remains. */
export const bendsOf = (rows: readonly MachineRow[]): readonly MachineRow[] => rows.filter(({ angle }) => angle > 0);

const sawing = (tube: BentTube, stock: string | null, units: Units): Step => ({
  id: `${tube.runner}/cut/${tube.id}`,
  runner: tube.runner,
  task: 'cut',
  title: `Saw tube ${tube.id}`,
  figures: [units.length('Length', tube.cutLength)],
  beside: stock ? [{ name: 'From', kind: 'words', value: stock }] : [],
  says: [
    `Square at both ends, burr off inside and outside. Write ${tube.id} on it, with an arrow the way the gas goes.`,
    'Scribe a line along it, from end to end: turns count from it.',
  ],
  care: tube.remarks.map(({ message }) => message),
  drawing: null,
});

function bending(header: Header, tube: BentTube, units: Units): Step[] {
  const end = endOf(tube);
  const rows = bendsOf(end === 'start' ? tube.fromStart : tube.fromEnd);
  if (rows.length === 0) return [];
  const { runner, id } = tube;
  const numbers = bendNumbers(tube, end);
  const marks = rows.map(({ mark, markEnd }) => ({ from: mark, to: markEnd }));
  const clockwise = settingsOf(header.design.workshop).rotation !== 'left-handed';
  const drawn = (now: number | null): Drawing => ({
    kind: 'marks',
    length: tube.cutLength,
    marks,
    now,
    ...(now !== null && { dial: { at: rows[now]!.dial, clockwise } }),
  });
  const from = end === 'start' ? 'the end where the gas comes in' : 'the end where the gas goes out';
  const marking: Step = {
    id: `${runner}/mark/${id}`,
    runner,
    task: 'mark',
    title: `Mark where tube ${id} is bent`,
    figures: rows.map(({ mark }, i) => units.length(`Bend ${numbers[i]}`, mark)),
    beside: [{ name: 'Measured from', kind: 'words', value: from }],
    says: ['Each mark goes round the tube, where its bend begins.'],
    care: [],
    drawing: drawn(null),
  };
  return [marking, ...rows.map((row, i) => bend(header, tube, row, { i, number: numbers[i]! }, drawn(i), units))];
}

function bend(
  header: Header,
  { runner, id }: BentTube,
  row: MachineRow,
  { i, number }: { readonly i: number; readonly number: number },
  drawing: Drawing,
  units: Units,
): Step {
  const { rotation } = settingsOf(header.design.workshop);
  const way = rotation === 'left-handed' ? 'counter-clockwise' : 'clockwise';
  return {
    id: `${runner}/bend/${id}/${i + 1}`,
    runner,
    task: 'bend',
    title: `Bend ${number} of tube ${id}`,
    figures: [
      units.length('Clamp at mark', row.mark),
      ...(i === 0 ? [] : [units.angle('Turn the dial to', row.dial)]),
      units.angle('Set the bend to', row.set),
    ],
    beside: [
      units.angle('Left once it has sprung back', row.angle),
      units.length('Carriage moves', row.feed),
      ...(i === 0 ? [] : [units.angle('Turn from the bend before', row.turn)]),
    ],
    says:
      i === 0
        ? ['Clamp with the scribed line in the bend’s plane, on its outside, and set the dial to 0.']
        : [`The dial counts ${way}, looking along the tube from the end that the marks are measured from.`],
    care: row.clamps ? [] : [`The clamp has only ${units.say(row.grip)} ahead of this bend.`],
    drawing,
  };
}

function trimming({ runner, id, trimStart, trimEnd }: BentTube, units: Units): Step[] {
  if (trimStart <= 0 && trimEnd <= 0) return [];
  return [
    {
      id: `${runner}/trim/${id}`,
      runner,
      task: 'cut',
      title: `Trim tube ${id}`,
      figures: [
        ...(trimStart > 0 ? [units.length('Off its start', trimStart)] : []),
        ...(trimEnd > 0 ? [units.length('Off its end', trimEnd)] : []),
      ],
      beside: [],
      says: ['Only once it is bent. Take the burr off again.'],
      care: [],
      drawing: null,
    },
  ];
}

/** A straight tube lies alike however it is turned. */
function clocking(header: Header, tube: BentTube | undefined, units: Units): Step[] {
  if (!tube || bendsOf(tube.fromStart).length === 0) return [];
  const od = header.design.tubes[tube.tube]?.outsideDiameter ?? 0;
  const place = placeOf(header, tube.runner);
  const step: Step = {
    id: `${tube.runner}/clock/${tube.id}`,
    runner: tube.runner,
    task: 'fit',
    title: `Set tube ${tube.id} at ${place}`,
    figures: [units.turn('Turn', tube.clocking), units.around('Round the outside', aroundTube(tube.clocking, od))],
    beside: [],
    says: [`From up at ${place} to the way its first bend turns, looking along the tube away from it.`],
    care: [],
    drawing: { kind: 'turn', degrees: tube.clocking, from: 'up', to: 'bend 1' },
  };
  return [step];
}

const joining = (before: BentTube, tube: BentTube, od: number, units: Units): Step => ({
  id: `${tube.runner}/join/${before.id}+${tube.id}`,
  runner: tube.runner,
  task: 'fit',
  title: `Turn tube ${tube.id} on ${before.id} and tack it`,
  figures: [units.turn('Turn', tube.clocking), units.around('Round the outside', aroundTube(tube.clocking, od))],
  beside: [],
  says: [
    `From the outside of the last bend of ${before.id} to the outside of the first bend of ${tube.id}, looking along the tube away from its start.`,
  ],
  care: [],
  drawing: { kind: 'turn', degrees: tube.clocking, from: before.id, to: tube.id },
});

const welding = (before: BentTube, tube: BentTube): Step => ({
  id: `${tube.runner}/weld/${before.id}+${tube.id}`,
  runner: tube.runner,
  task: 'weld',
  title: `Weld ${before.id} to ${tube.id}`,
  figures: [],
  beside: [],
  says: ['Weld by quarters, opposite ones in turn, so that it is drawn evenly.'],
  care: [],
  drawing: null,
});
