/** What a header is in a few lines, for the packet's first page: engine, tubes and how they are made, lengths, work, mass, money. */
import type { Display } from '../../../shared/design/types';
import { formatLength } from '../../../shared/units';
import type { TubeGroup } from '../making/report';
import { type Bench, tubeWords } from './bench';
import { massWords } from './mass';
import { moneyWords } from './money';

export type Fact = readonly [head: string, words: string];

export function keyNumbers(bench: Bench, display: Display): Fact[] {
  const { header, making } = bench;
  const { mass, cost, groups } = making;
  const stopped = groups.flatMap((g) => g[g.chosen].remarks).some((r) => r.stops);
  return [
    ...engineFact(bench),
    ...groups.map((group): Fact => [group.tube, groupWords(bench, group, display)]),
    ...[...header.groups.keys()].flatMap((id) => lengthFact(bench, id, display)),
    ...(mass.total > 0 ? [['Mass', `${massWords(mass.total, display)} of metal`] as const] : []),
    ...(cost.known > 0
      ? [
          [
            'Cost',
            cost.total === null
              ? `${moneyWords(cost.known, cost.currency)} and what has no price yet`
              : moneyWords(cost.total, cost.currency),
          ] as const,
        ]
      : []),
    ...(stopped ? [['Mind', 'It cannot be made as it stands: the runners’ pages say why.'] as const] : []),
  ];
}

function engineFact({ header: { design } }: Bench): Fact[] {
  const { cylinders, firingOrder } = design.engine ?? {};
  const words = [
    ...(cylinders ? [`${cylinders} cylinders`] : []),
    ...(firingOrder ? [`firing order ${firingOrder.join('-')}`] : []),
  ];
  return words.length > 0 ? [['Engine', words.join(', ')]] : [];
}

const counted = (n: number, one: string): string => `${n} ${one}${n === 1 ? '' : 's'}`;

function groupWords({ header }: Bench, group: TubeGroup, display: Display): string {
  const { chosen, runners } = group;
  const { pieces, welds, bends } = group[chosen];
  const resolved = header.runners.find((r) => r.runner.id === runners[0]);
  const tube = resolved ? `${tubeWords(resolved, display)}; ` : '';
  return chosen === 'welded'
    ? `${tube}${counted(runners.length, 'tube')} welded up of ${counted(pieces, 'piece')}, ${counted(welds, 'weld')} between them`
    : `${tube}${counted(runners.length, 'tube')} bent, ${counted(bends, 'bend')}${welds > 0 ? `, ${counted(welds, 'weld')} at splits` : ''}`;
}

/** As rules measure it: with what lies in the head. */
function lengthFact({ header }: Bench, id: string, display: Display): Fact[] {
  const lengths = header.runners.flatMap((r) =>
    r.centerline && r.runner.group === id ? [r.centerline.length + r.lengthInHead] : [],
  );
  if (lengths.length === 0) return [];
  const [least, most] = [Math.min(...lengths), Math.max(...lengths)];
  const say = (mm: number): string => formatLength(mm, display);
  const { length, tolerance } = header.groups.get(id)!;
  const head = header.runners.some((r) => r.runner.group === id && r.lengthInHead > 0) ? ' with the head' : '';
  const wanted = length === null ? '' : `, wanted ${say(length)}`;
  const found = say(least) === say(most) ? say(least) : `${say(least)} to ${say(most)}`;
  return [[`${id} length`, `${found}${head}${wanted}, within ± ${say(tolerance)}`]];
}
