/**
 * The ways in which a tool can be put on, swung and taken off again, as room in the place's own frame: bars round the axis that
 * must be free, and arms that must be free over a run of stands about it. mm, radians.
 */
import type { Access } from '../../shared/design/types';
import {
  DRIVE_DEPTH,
  EXTENSION_DIAMETER,
  EXTENSIONS,
  HAND_ROOM,
  openEndSpanner,
  RATCHET,
  ringSpanner,
  type SpannerSize,
  STRAP,
  sizeName,
  socketSize,
  TOOL_KINDS,
  type ToolKind,
} from '../../shared/stock/tools';
import { RADIANS } from '../tolerance';
import type { Place } from './place';
import type { Arm } from './swing';

/** Round the axis, flat at both ends. */
export type Bar = { readonly from: number; readonly to: number; readonly radius: number };

export type Way = {
  readonly name: string;
  readonly kind: ToolKind;
  /** Free all the way: the tool put on and drawn off, and what comes out. */
  readonly bars: readonly Bar[];
  /** Free over a run of stands of at least `swing`, while it is turned. */
  readonly arms: readonly Arm[];
  readonly swing: number;
  /** Free at one stand of that run at least: how it is brought there. */
  readonly approach: readonly Arm[];
  /** As it stands at rest, for drawing: bars, and the arms above. */
  readonly rest: readonly Bar[];
  /** Why it fits nobody, whatever stands around; null where it may. */
  readonly unfit: string | null;
};

/** Ways of every kind at hand that this place knows, the plainest first within a kind. */
export function waysTo(place: Place, access: Access | undefined): Way[] {
  const extensions = access?.extensions ?? EXTENSIONS;
  const kinds = kindsFor(place).filter((kind) => kind === 'hand' || !access?.tools || access.tools.includes(kind));
  return kinds.flatMap((kind) => MAKERS[kind](place, [0, ...[...extensions].sort((a, b) => a - b)]));
}

/** Every kind of tool that is for this place, at hand or not. */
export const kindsFor = (place: Place): readonly ToolKind[] => place.service?.tools ?? SPANNER_KINDS;

const SPANNER_KINDS: readonly ToolKind[] = TOOL_KINDS.slice(0, 4);

type Maker = (place: Place, extensions: readonly number[]) => Way[];

const MAKERS: Readonly<Record<ToolKind, Maker>> = {
  socket: (place, extensions) => extensions.map((e) => socketWay(place, 'socket', e)),
  'deep-socket': (place, extensions) => extensions.map((e) => socketWay(place, 'deep-socket', e)),
  'ring-spanner': (place) => [ringWay(place)],
  'open-end-spanner': (place) => [openEndWay(place)],
  'strap-wrench': (place) => [strapWay(place)],
  hand: (place) => [handWay(place)],
};

const drawnBar = ({ drawn }: Place): Bar => ({ from: 0, to: drawn.top, radius: drawn.radius });

function socketWay(place: Place, kind: 'socket' | 'deep-socket', extension: number): Way {
  const { acrossFlats, height } = place.hex!;
  const { diameter, length, hollow } = socketSize(acrossFlats, kind === 'deep-socket');
  const radius = diameter / 2;
  const { headDiameter, headHeight, handleRadius, length: reach, swing } = RATCHET;
  const over = Math.max(place.stud, height);
  const head: Bar = { from: length + extension, to: length + extension + headHeight, radius: headDiameter / 2 };
  const bar: Bar[] = extension > 0 ? [{ from: length, to: length + extension, radius: EXTENSION_DIAMETER / 2 }] : [];
  const joint = extension > 0 ? `, ${Number(extension.toFixed(1))} mm extension` : '';
  return {
    name: `${sizeName(acrossFlats)} ${kind === 'socket' ? 'socket' : 'deep socket'}${joint}`,
    kind,
    bars: [
      drawnBar(place),
      // Drawn off past stud or head; extension and ratchet come off one after the other, each by its square.
      { from: 0, to: length + over, radius },
      ...bar.map((b) => ({ ...b, to: b.to + DRIVE_DEPTH })),
      { ...head, to: head.to + DRIVE_DEPTH },
    ],
    arms: [{ height: head.from + headHeight / 2, rise: 0, length: reach, radius: handleRadius }],
    swing: swing * RADIANS,
    approach: [],
    rest: [{ from: 0, to: length, radius }, ...bar, head],
    unfit:
      place.stud > hollow
        ? `its hollow takes ${Number(hollow.toFixed(1))} mm of stud, and ${Number(place.stud.toFixed(1))} mm stand out`
        : null,
  };
}

/** A tool is lifted in steps of this. */
const LIFT = 3;

function ringWay(place: Place): Way {
  const { acrossFlats, height } = place.hex!;
  const size = ringSpanner(acrossFlats);
  const { headWidth, thickness, swing } = size;
  const lifted = Math.max(place.stud, height);
  const arm = handle(size, Math.max(thickness / 2, size.handleRadius));
  const steps = Math.ceil(lifted / LIFT);
  return {
    name: `${sizeName(acrossFlats)} ring spanner`,
    kind: 'ring-spanner',
    bars: [drawnBar(place), { from: 0, to: lifted + thickness, radius: headWidth / 2 }],
    arms: [arm],
    swing: swing * RADIANS,
    approach: Array.from({ length: steps }, (_, k) => ({ ...arm, height: arm.height + (lifted * (k + 1)) / steps })),
    rest: [{ from: 0, to: thickness, radius: headWidth / 2 }],
    unfit: null,
  };
}

/** It is slid on from the side, by so much of the nut's width and a little. */
const SLID = 1.2;

function openEndWay(place: Place): Way {
  const { acrossFlats, height } = place.hex!;
  const size = openEndSpanner(acrossFlats);
  const { headWidth, thickness, swing } = size;
  const from = Math.max(0, height - thickness);
  const middle = from + thickness / 2;
  const slid = SLID * acrossFlats;
  const arm = handle(size, Math.max(middle, size.handleRadius));
  return {
    name: `${sizeName(acrossFlats)} open-end spanner`,
    kind: 'open-end-spanner',
    bars: [drawnBar(place), { from, to: from + thickness, radius: headWidth / 2 }],
    arms: [arm],
    swing: swing * RADIANS,
    approach: [
      { ...arm, length: arm.length + slid },
      { height: middle, rise: 0, length: slid, radius: headWidth / 2, flat: thickness / 2 },
    ],
    rest: [{ from, to: from + thickness, radius: headWidth / 2 }],
    unfit: null,
  };
}

const handle = ({ rise, length, handleRadius }: SpannerSize, height: number): Arm => ({
  height,
  rise: rise * RADIANS,
  length,
  radius: handleRadius,
});

function strapWay(place: Place): Way {
  const { diameter, length } = place.service!;
  const { thickness, width, length: reach, handleRadius, swing } = STRAP;
  const radius = diameter / 2 + thickness;
  const from = Math.max(0, (length - width) / 2);
  return {
    name: 'strap wrench',
    kind: 'strap-wrench',
    bars: [drawnBar(place), { from, to: length, radius }],
    arms: [{ height: from + width / 2, rise: 0, length: diameter / 2 + reach, radius: handleRadius }],
    swing: swing * RADIANS,
    approach: [],
    rest: [{ from, to: Math.min(length, from + width), radius }],
    unfit: null,
  };
}

/** Fingers round the outer half of what stands out, or round the grip of what does not. */
function handWay(place: Place): Way {
  const { diameter, length, standsOut } = place.service!;
  const top = standsOut * length;
  const grip: Bar = { from: top / 2, to: top + HAND_ROOM, radius: diameter / 2 + HAND_ROOM };
  return {
    name: 'hand',
    kind: 'hand',
    bars: [drawnBar(place), grip],
    arms: [],
    swing: 0,
    approach: [],
    rest: [{ from: 0, to: Math.max(top, 1), radius: diameter / 2 }],
    unfit: null,
  };
}
