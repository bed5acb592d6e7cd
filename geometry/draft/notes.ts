/** What a draft has to say to its maker: what was chosen and why, what could not be had, what stands in for what. */
import type { Design } from '../../shared/design/types';
import type { EngineForm } from '../../shared/engine/form';
import { formatLength } from '../../shared/units';
import type { CheckReport } from '../check/report';
import type { Joining } from './joining';
import { PRIMARIES, SECONDARIES } from './parts';

const MOST_FINDINGS = 5;

export function notesOf(
  form: EngineForm,
  joining: readonly Joining[],
  design: Design,
  report: CheckReport,
  cancelled: boolean,
): string[] {
  return [
    ...(cancelled ? ['Stopped before the end: this is the best so far.'] : []),
    ...failing(report),
    ...lengths(form, design),
    ...joining.flatMap(joined),
    standIn(design),
  ];
}

function failing({ problems }: CheckReport): string[] {
  if (problems.length === 0) return [];
  const shown = problems.slice(0, MOST_FINDINGS).map((p) => p.message);
  const more = problems.length > shown.length ? [`And ${problems.length - shown.length} more findings.`] : [];
  const hint = 'Move the collector, allow another length, or shape it by hand and balance.';
  return [`Best attempt: not every rule holds. ${hint}`, ...shown, ...more];
}

function lengths({ primary, secondary, display }: EngineForm, { groups }: Design): string[] {
  const note = (name: string, asked: number | null | undefined, id: string): string[] => {
    const drawn = groups[id]?.length;
    if (asked === null || asked === undefined || drawn === undefined || drawn === asked) return [];
    const instead = drawn === null ? 'left free' : `drawn at ${formatLength(drawn, display)}, the nearest found`;
    return [`${name} of ${formatLength(asked, display)} are out of reach here: ${instead}.`];
  };
  return [...note('Primaries', primary.length, PRIMARIES), ...note('Secondaries', secondary?.length, SECONDARIES)];
}

function joined({ collector, first, equallyGood }: Joining): string[] {
  if (first.length === 0) return [];
  const sets = first.map(({ cylinders, apart }) => `${cylinders.join(' + ')} (${Math.round(apart)}° apart)`);
  const ties = equallyGood > 1 ? ` ${equallyGood} ways are as good by the firing order; these stand nearest.` : '';
  return [`Into the ${collector}, first joined: ${sets.join(', ')}.${ties}`];
}

function standIn({ surroundings = [] }: Design): string {
  const heads = surroundings.filter((s) => s.kind === 'head').length;
  const bars = heads === 1 ? 'A bar behind the ports stands' : 'Bars behind the ports stand';
  return `${bars} in for the ${heads === 1 ? 'head' : 'heads'}: put your own measures in ${heads === 1 ? 'its' : 'their'} place, and what else is in the way.`;
}
