/** What is named in the 3D view, and where its name may hang. mm, in the design's frame. */
import { add, addScaled, type Header, pointAt, type ResolvedPort, type ResolvedRunner } from '../../../../geometry';
import { middleOfSurrounding } from '../../../../shared/design/edit';
import { remembered } from '../../../../shared/remember';
import type { Vec3 } from '../../../../shared/vec3';
import type { ShownPart } from '../../made/shape';
import { partName } from '../../made/words';
import type { Ref } from '../../session';
import { ASSEMBLED, type Exploded } from './explode';
import { besidePart } from './joinShapes';
import { plates } from './plates';

export type Label = {
  readonly key: string;
  readonly kind: 'cylinder' | 'runner' | 'part' | 'name';
  readonly text: string;
  readonly ref: Ref;
  /** Places to try, best first. */
  readonly at: readonly Vec3[];
};

/** Shares of a runner's length at which its label may hang. */
const ALONG = [0.5, 0.42, 0.58, 0.34, 0.66, 0.26, 0.74];
/** From the edge of an opening to its cylinder's number, mm. */
const NUMBER_OFF = 20;
/** From a part's side to its name, mm. */
const NAME_OFF = 12;

const portLabel = remembered(({ port, pose }: ResolvedPort): Label => {
  const o = port.opening;
  const high = (o.shape === 'round' ? o.diameter : o.height) / 2 + NUMBER_OFF;
  return {
    key: `port ${port.id}`,
    kind: 'cylinder',
    text: String(port.cylinder),
    ref: { kind: 'port', id: port.id },
    at: [addScaled(pose.position, pose.up, high)],
  };
});

const runnerLabel = remembered(({ runner, centerline }: ResolvedRunner): Label | null =>
  centerline === null
    ? null
    : {
        key: `runner ${runner.id}`,
        kind: 'runner',
        text: runner.id,
        ref: { kind: 'runner', id: runner.id },
        at: ALONG.map((share) => pointAt(centerline, share * centerline.length).position),
      },
);

/** Numbers at the ports and names of the runners: always wished for. */
export const standingLabels = (header: Header): Label[] => [
  ...[...header.ports.values()].map(portLabel),
  ...header.runners.map(runnerLabel).filter((label) => label !== null),
];

/**
 * The same while the header is shown taken apart: names go with what they name, and every part that stands off has its own.
 * @param parts those that are seen
 */
export function labelsApart(header: Header, parts: readonly ShownPart[], exploded: Exploded): Label[] {
  const standing = standingLabels(header);
  if (exploded === ASSEMBLED) return standing;
  const heads = new Map(
    plates(header).flatMap(({ id, ports }) =>
      ports.map(({ port }) => [port.id, exploded.plates.get(id)?.head] as const),
    ),
  );
  const moved = standing.map((label) => {
    const away = label.kind === 'cylinder' ? heads.get(label.ref.id) : exploded.runners.get(label.ref.id);
    return away ? { ...label, at: label.at.map((p) => add(p, away)) } : label;
  });
  const named = parts
    .filter(({ kind }) => kind !== 'tube')
    .map((part): Label => {
      const away = exploded.parts.get(part.id) ?? [0, 0, 0];
      const at = besidePart(part, away, NAME_OFF).map((p) => add(p, away));
      return { key: part.id, kind: 'part', text: partName(part), ref: part.of, at };
    });
  return [...moved, ...named];
}

/** The name of a collector, surrounding or flange, for as long as it is hovered or selected. */
export function nameLabel(header: Header, ref: Ref | null): Label | null {
  if (!ref) return null;
  const label = (at: Vec3): Label => ({ key: `${ref.kind} ${ref.id}`, kind: 'name', text: ref.id, ref, at: [at] });
  if (ref.kind === 'merge') {
    const body = header.merges.get(ref.id)?.body;
    return body ? label(addScaled(body.position, body.axis, body.length / 2)) : null;
  }
  if (ref.kind === 'surrounding') {
    const s = header.surroundings.find(({ id }) => id === ref.id);
    return s && s.shape !== 'mesh' ? label(middleOfSurrounding(s)) : null;
  }
  return null;
}
