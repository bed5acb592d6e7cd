/**
 * Takes things out of a design. What only lists a thing lets go of it (a flange its port, a runner its group); what cannot
 * do without it is a reason to refuse, unless it is removed in the same edit.
 */
import { describe } from '../refusal';
import type { Design, Runner } from '../types';
import { checked, type Edited, refused } from './edited';
import { placeOfThing, segmentsOf, type Thing } from './things';

export function remove(design: Design, things: readonly Thing[]): Edited {
  for (const thing of things) {
    if (thing.kind === 'design') return refused('document', 'the whole design', 'a part of it');
    if (!segmentsOf(design, thing)) return refused(placeOfThing(thing), 'nothing there', 'a thing of this design');
  }
  const gone = (kind: Thing['kind'], id: string) => things.some((thing) => thing.kind === kind && thing.id === id);
  const goneTube = (id: string) => gone('tube', id) || gone('tooling', id);
  const runners = design.runners.filter((runner) => !gone('runner', runner.id));
  const held = things.map((thing) => needed(thing, runners)).find((why) => why !== null);
  if (held) return held;

  const { engine, ...rest } = design;
  const left = { ...rest, ...(engine && !gone('engine', '') && { engine }) };
  const goneFastener = (flange: string, index: number) =>
    things.some((thing) => thing.kind === 'fastener' && thing.id === flange && thing.index === index);
  const keep = <T>(record: Readonly<Record<string, T>>, isGone: (id: string) => boolean): Record<string, T> =>
    Object.fromEntries(Object.entries(record).filter(([id]) => !isGone(id)));
  return checked({
    ...left,
    ports: design.ports.filter((port) => !gone('port', port.id)),
    ...(design.flanges && {
      flanges: design.flanges
        .filter((flange) => !gone('flange', flange.id))
        .map((flange) => ({
          ...flange,
          ports: flange.ports.filter((port) => !gone('port', port)),
          ...(flange.fasteners && { fasteners: flange.fasteners.filter((_, i) => !goneFastener(flange.id, i)) }),
        })),
    }),
    tubes: keep(design.tubes, goneTube),
    tooling: keep(design.tooling, goneTube),
    merges: design.merges.filter((merge) => !gone('merge', merge.id)),
    runners: runners.map((runner) =>
      runner.group !== undefined && gone('group', runner.group) ? ungrouped(runner) : runner,
    ),
    groups: keep(design.groups, (id) => gone('group', id)),
    ...(design.surroundings && { surroundings: design.surroundings.filter((thing) => !gone('surrounding', thing.id)) }),
    ...(design.service && { service: design.service.filter((point) => !gone('service', point.id)) }),
    ...(design.sensors && {
      sensors: design.sensors.filter(
        ({ id, on }) => !gone('sensor', id) && !('runner' in on ? gone('runner', on.runner) : gone('merge', on.merge)),
      ),
    }),
  });
}

const ungrouped = ({ group: _, ...runner }: Runner): Runner => runner;

/** Why a remaining runner cannot do without the thing. */
function needed(thing: Thing, runners: readonly Runner[]): Edited | null {
  const by = runners.find((runner) => {
    if (thing.kind === 'port') return 'port' in runner.from && runner.from.port === thing.id;
    if (thing.kind === 'merge')
      return runner.to.merge === thing.id || ('merge' in runner.from && runner.from.merge === thing.id);
    return (thing.kind === 'tube' || thing.kind === 'tooling') && runner.tube === thing.id;
  });
  if (!by) return null;
  const [use, instead] =
    thing.kind === 'port'
      ? ['starts there', 'let it start elsewhere']
      : thing.kind === 'merge'
        ? ['runs to or from it', 'let it run elsewhere']
        : ['is made of it', 'give it another tube'];
  return refused(
    placeOfThing(thing),
    `runner ${describe(by.id)}, which ${use}`,
    `remove that runner too, or ${instead} first`,
  );
}
