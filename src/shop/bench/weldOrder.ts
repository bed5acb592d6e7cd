/**
 * Every weld of a header in an order that a torch can follow. Between pieces first, runner by runner: where the runner itself is in
 * the way, as soon as its two pieces are tacked; the rest from the start on, on the bench, before other runners stand beside it.
 * Then ends: at flanges from the middle outward, alternating, which draws a plate least; collectors last, once all tubes lie in
 * them without force. Common practice.
 */
import { distance, type Header, pointAt, type ResolvedRunner } from '../../../geometry';
import type { Vec3 } from '../../../shared/vec3';
import { chosenWay } from '../making/chosen';
import type { BentTube, Joint } from '../making/report';
import { isAllRound, OWN } from '../making/welded/torchRoom';
import { type Bench, endName, startName } from './bench';
import { jointName } from './weldedBlocks';

export type Weld = {
  readonly kind: 'joint' | 'start' | 'end';
  readonly runner: string;
  readonly name: string;
  readonly place: Vec3;
  /** Degrees that a torch reaches while the whole runner is there; null where it is not asked. */
  readonly torch: number | null;
  /** The same with the other runners in place. */
  readonly torchInPlace: number;
  readonly inTheWay: readonly string[];
  /** It cannot be reached all round once the runner is whole. */
  readonly early: boolean;
};

export function weldOrder(bench: Bench): Weld[] {
  const { header } = bench;
  const routed = header.runners.filter((r) => r.centerline);
  const joints = routed.flatMap((r) => jointsOf(bench, r));
  return [...joints, ...startWelds(header, routed), ...endWelds(routed)];
}

function jointsOf({ making }: Bench, resolved: ResolvedRunner): Weld[] {
  const { runner } = resolved;
  if (chosenWay(making, runner.tube) === 'bent')
    return splitWelds(
      resolved,
      making.bent.filter((t) => t.runner === runner.id),
    );
  const tube = making.welded.find((t) => t.runner === runner.id);
  if (!tube) return [];
  const welds = tube.joints.map(
    (joint): Weld => ({
      kind: 'joint',
      runner: runner.id,
      name: jointName(tube, joint),
      place: joint.position,
      torch: joint.torchFree,
      torchInPlace: joint.torchFreeInPlace ?? joint.torchFree,
      inTheWay: joint.inTheWay,
      early: isEarly(joint),
    }),
  );
  return [...welds.filter((w) => w.early), ...welds.filter((w) => !w.early)];
}

const isEarly = ({ torchFree, inTheWay }: Joint): boolean => !isAllRound(torchFree) && inTheWay.includes(OWN);

function splitWelds({ runner, centerline: line }: ResolvedRunner, tubes: readonly BentTube[]): Weld[] {
  return tubes.slice(1).map((tube, i): Weld => {
    const station = Math.max(0, tube.from);
    return {
      kind: 'joint',
      runner: runner.id,
      name: `${tubes[i]!.id} | ${tube.id}`,
      place: pointAt(line!, station).position,
      torch: null,
      torchInPlace: 360,
      inTheWay: [],
      early: false,
    };
  });
}

/** At flanges and at collectors that a runner leaves; those of one flange from its middle outward. */
function startWelds(header: Header, routed: readonly ResolvedRunner[]): Weld[] {
  const { design } = header;
  const flangeOf = (r: ResolvedRunner) => {
    const { from } = r.runner;
    return 'port' in from ? design.flanges?.find((f) => f.ports.includes(from.port)) : undefined;
  };
  const places = [...new Set(routed.map((r) => flangeOf(r)?.id ?? startName(r)))];
  return places.flatMap((place) => {
    const here = routed.filter((r) => (flangeOf(r)?.id ?? startName(r)) === place);
    const outward = middleOutward(here);
    // A transition is a part of its own, between tube and flange.
    const led = outward.flatMap((r) => {
      const length = transitionOf(header, r);
      return length === null
        ? []
        : [startWeld(r, `${r.runner.id} | ${transitionName(r)}`, pointAt(r.centerline!, length).position)];
    });
    const held = outward.flatMap((r) => {
      const to = flangeOf(r)?.id;
      const isLed = transitionOf(header, r) !== null;
      // Without a flange a transition is welded to nothing that is drawn.
      if (isLed && !to) return [];
      return [startWeld(r, `${isLed ? transitionName(r) : r.runner.id} | ${to ?? startName(r)}`, r.start.position)];
    });
    return [...led, ...held];
  });
}

/** How long it is; null where there is none. */
function transitionOf({ ports }: Header, { runner: { from } }: ResolvedRunner): number | null {
  return ('port' in from ? ports.get(from.port)?.port.transition?.length : undefined) ?? null;
}

/** As the bill of materials calls it. */
const transitionName = (r: ResolvedRunner): string => `${startName(r)} transition`;

const startWeld = ({ runner }: ResolvedRunner, name: string, place: Vec3): Weld => ({
  kind: 'start',
  runner: runner.id,
  name,
  place,
  torch: null,
  torchInPlace: 360,
  inTheWay: [],
  early: false,
});

function middleOutward(here: readonly ResolvedRunner[]): ResolvedRunner[] {
  if (here.length < 2) return [...here];
  const places = here.map((r) => r.start.position);
  const mean = [0, 1, 2].map((k) => places.reduce((sum, p) => sum + p[k]!, 0) / places.length);
  const middle: Vec3 = [mean[0]!, mean[1]!, mean[2]!];
  return [...here].sort((a, b) => distance(a.start.position, middle) - distance(b.start.position, middle));
}

const endWelds = (routed: readonly ResolvedRunner[]): Weld[] =>
  [...routed]
    .sort((a, b) => a.runner.to.merge.localeCompare(b.runner.to.merge) || inlet(a) - inlet(b))
    .map(
      (r): Weld => ({
        kind: 'end',
        runner: r.runner.id,
        name: `${r.runner.id} | ${endName(r)}`,
        place: r.centerline!.points.at(-1)!,
        torch: null,
        torchInPlace: 360,
        inTheWay: [],
        early: false,
      }),
    );

const inlet = ({ runner }: ResolvedRunner): number => runner.to.inlet ?? 0;
