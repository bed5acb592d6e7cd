/** Fields of a runner; its points and radii have a table of their own. */
import { type Edited, segmentsOf, setFields } from '../../../../shared/design/edit';
import type { Runner, RunnerStart } from '../../../../shared/design/types';
import type { Choice } from '../ChoiceField';
import type { Context, Section } from './spec';

const startName = (from: RunnerStart): string => ('port' in from ? `port ${from.port}` : `merge ${from.merge}`);

/** Who else starts there, or ends at that inlet. */
function taken(design: Context<Runner>['design'], self: string, is: (runner: Runner) => boolean): string {
  const other = design.runners.find((runner) => runner.id !== self && is(runner));
  return other ? `, taken by ${other.id}` : '';
}

function startChoices({ design, entry }: Context<Runner>): readonly Choice[] {
  const choice = (from: RunnerStart, name: string): Choice => {
    const by = taken(design, entry.id, (r) => startName(r.from) === startName(from));
    return { value: startName(from), name: name + by, disabled: by !== '' };
  };
  return [
    ...design.ports.map(({ id }) => choice({ port: id }, `Port ${id}`)),
    ...design.merges.map(({ id }) => choice({ merge: id }, `Outlet of ${id}`)),
  ];
}

function setStart({ design, thing, entry }: Context<Runner>, value: string | undefined): Edited {
  const id = value?.slice(value.indexOf(' ') + 1) ?? '';
  const { port: _, merge: __, ...others } = entry.from as Record<string, unknown>;
  const from = value?.startsWith('port ') ? { ...others, port: id } : { ...others, merge: id };
  return setFields(design, [[[...segmentsOf(design, thing)!, 'from'], from]]);
}

const inletTaken = (design: Context<Runner>['design'], self: string, merge: string, inlet: number): string =>
  taken(design, self, (r) => r.to.merge === merge && r.to.inlet === inlet);

/** A runner that is laid needs an inlet to end at; one that is not leaves it open. */
function setMerge({ design, thing, entry }: Context<Runner>, merge: string | undefined): Edited {
  if (merge === entry.to.merge) return { ok: true, design };
  const { inlet: _, ...to } = entry.to;
  const inlets = design.merges.find(({ id }) => id === merge)?.inlets ?? 0;
  const free = Array.from({ length: inlets }, (_, i) => i + 1).find(
    (n) => inletTaken(design, entry.id, merge ?? '', n) === '',
  );
  const laid = entry.points !== undefined && free !== undefined;
  return setFields(design, [[[...segmentsOf(design, thing)!, 'to'], { ...to, merge, ...(laid && { inlet: free }) }]]);
}

function inletChoices({ design, entry }: Context<Runner>): readonly Choice[] {
  const inlets = design.merges.find(({ id }) => id === entry.to.merge)?.inlets ?? 0;
  return Array.from({ length: inlets }, (_, i) => {
    const by = inletTaken(design, entry.id, entry.to.merge, i + 1);
    return { value: String(i + 1), name: `${i + 1}${by}`, disabled: by !== '' };
  });
}

export const runnerSections: readonly Section<Runner>[] = [
  {
    fields: [
      {
        type: 'choice',
        label: 'Tube',
        at: ['tube'],
        choices: ({ design }) => Object.keys(design.tubes).map((id) => ({ value: id, name: id })),
        meaning: 'what it is made of, with its tooling',
      },
      {
        type: 'choice',
        label: 'Group',
        at: ['group'],
        optional: true,
        fallback: 'none',
        choices: ({ design }) => Object.keys(design.groups).map((id) => ({ value: id, name: id })),
        meaning: 'the runners that it must be as long as',
      },
      {
        type: 'choice',
        label: 'From',
        at: ['from'],
        get: ({ entry }) => startName(entry.from),
        choices: startChoices,
        set: setStart,
        meaning: "the port, or the collector's outlet, where it starts",
      },
      {
        type: 'choice',
        label: 'To',
        at: ['to', 'merge'],
        choices: ({ design }) => design.merges.map(({ id }) => ({ value: id, name: id })),
        set: setMerge,
      },
      {
        type: 'choice',
        label: 'Inlet',
        at: ['to', 'inlet'],
        optional: true,
        fallback: 'whichever suits',
        choices: inletChoices,
        get: ({ entry }) => (entry.to.inlet === undefined ? null : String(entry.to.inlet)),
        set: ({ design, thing }, value) =>
          setFields(design, [
            [[...segmentsOf(design, thing)!, 'to', 'inlet'], value === undefined ? undefined : Number(value)],
          ]),
        meaning: 'which of the inlets it ends at',
      },
    ],
  },
];
