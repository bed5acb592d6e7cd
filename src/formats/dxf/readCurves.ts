/** Entities → curves in the file's own unit: closed ones, and open ones that are to be joined. What is no plane curve of straights and arcs is refused. */
import type { OutlineVertex } from '../../../shared/design/types';
import { DxfError } from './dxfError';
import type { Entity } from './readGroups';

export type Curve = {
  readonly closed: boolean;
  /** The last one's bulge counts only where it is closed. */
  readonly vertices: readonly OutlineVertex[];
  readonly layer: string;
  /** For people: `LINE on layer "0" at (1, 2), handle 2F`. */
  readonly place: string;
};

export type Ellipse = {
  readonly centre: readonly [number, number];
  readonly major: readonly [number, number];
  readonly ratio: number;
  readonly layer: string;
  readonly place: string;
};

export type Curves = {
  readonly curves: readonly Curve[];
  readonly ellipses: readonly Ellipse[];
  /** How many entities of each kind are no cuts, and left out. */
  readonly leftOut: ReadonlyMap<string, number>;
};

const REFUSED: Readonly<Record<string, string>> = {
  SPLINE: 'convert splines to arcs, or to polylines of arcs',
  HELIX: 'convert it to arcs',
  INSERT: 'explode blocks before saving, or delete this one',
  '3DFACE': 'save a plane drawing of the flange',
  REGION: 'explode regions into lines and arcs',
  BODY: 'save a plane drawing of the flange',
  '3DSOLID': 'save a plane drawing of the flange',
  MLINE: 'explode it into lines',
};

/** Marks, not cuts, by our own layers. */
const NOT_CUT = 'ETCH';
const MOST_VERTICES = 200_000;

export function readCurves(entities: readonly Entity[]): Curves {
  const curves: Curve[] = [];
  const ellipses: Ellipse[] = [];
  const leftOut = new Map<string, number>();
  let vertices = 0;
  for (let i = 0; i < entities.length; i++) {
    const reader = new Reader(entities[i]!);
    const { type } = entities[i]!;
    const corners: Entity[] = [];
    if (type === 'POLYLINE') {
      while (entities[i + 1]?.type === 'VERTEX') corners.push(entities[++i]!);
      if (entities[i + 1]?.type !== 'SEQEND') reader.refuse('its end (SEQEND) is missing: export it again');
      i++;
    }
    if (
      reader.whole(67) === 1 ||
      reader.layer === NOT_CUT ||
      !(Object.hasOwn(READERS, type) || Object.hasOwn(REFUSED, type))
    ) {
      leftOut.set(type, (leftOut.get(type) ?? 0) + 1);
      continue;
    }
    if (Object.hasOwn(REFUSED, type)) reader.refuse(REFUSED[type]!);
    const curve = READERS[type]!(reader, corners);
    if ('ratio' in curve) ellipses.push(curve);
    else curves.push(curve);
    vertices += 'ratio' in curve ? 0 : curve.vertices.length;
    if (vertices > MOST_VERTICES)
      throw new DxfError(`it holds more than ${MOST_VERTICES} corners: save the flange alone`);
  }
  return { curves, ellipses, leftOut };
}

/** One entity's groups by code, each number checked. */
class Reader {
  constructor(private readonly entity: Entity) {}

  get layer(): string {
    return this.entity.groups.find(([code]) => code === 8)?.[1] ?? '0';
  }

  get groups() {
    return this.entity.groups;
  }

  place(): string {
    const find = (code: number) => this.entity.groups.find(([c]) => c === code)?.[1];
    const [x, y, handle] = [find(10), find(20), find(5)];
    const at = x !== undefined && y !== undefined ? ` at (${short(x)}, ${short(y)})` : '';
    return `${this.entity.type} on layer ${JSON.stringify(this.layer)}${at}${handle ? `, handle ${handle}` : ''}, line ${this.entity.line}`;
  }

  refuse(remedy: string): never {
    throw new DxfError(`${this.place()}: ${remedy}`);
  }

  parse(text: string | undefined, code: number): number {
    const value = text === undefined || text === '' ? Number.NaN : Number(text);
    if (!Number.isFinite(value) || Math.abs(value) > 1e7)
      this.refuse(
        `group ${code} is ${text === undefined ? 'missing' : JSON.stringify(text.slice(0, 20))}, not a number that a drawing can hold; export it again`,
      );
    return value;
  }

  number(code: number, otherwise?: number): number {
    const text = this.entity.groups.find(([c]) => c === code)?.[1];
    return text === undefined && otherwise !== undefined ? otherwise : this.parse(text, code);
  }

  whole(code: number): number {
    return Math.trunc(this.number(code, 0));
  }

  /** −1 where it is seen from below, as mirrored parts are; drawn in no plane across the view it is refused. */
  side(): 1 | -1 {
    const [x, y, z] = [this.number(210, 0), this.number(220, 0), this.number(230, 1)];
    if (Math.hypot(x, y) > 1e-6 * Math.abs(z) || z === 0)
      this.refuse('it lies in a slanting plane: flatten the drawing into the XY plane');
    return z < 0 ? -1 : 1;
  }
}

const short = (text: string): string => String(Math.round(Number(text) * 1000) / 1000);

type Read = (reader: Reader, corners: readonly Entity[]) => Curve | Ellipse;

const READERS: Readonly<Record<string, Read>> = {
  LINE: (r) => ({
    closed: false,
    vertices: [
      [r.number(10), r.number(20), 0],
      [r.number(11), r.number(21), 0],
    ],
    layer: r.layer,
    place: r.place(),
  }),
  CIRCLE(r) {
    const side = r.side();
    const [x, y, radius] = [side * r.number(10), r.number(20), radiusOf(r)];
    return {
      closed: true,
      vertices: [
        [x + radius, y, 1],
        [x - radius, y, 1],
      ],
      layer: r.layer,
      place: r.place(),
    };
  },
  ARC(r) {
    const side = r.side();
    const [x, y, radius] = [r.number(10), r.number(20), radiusOf(r)];
    const from = (r.number(50) * Math.PI) / 180;
    const round = 2 * Math.PI;
    const turn = ((((r.number(51) * Math.PI) / 180 - from) % round) + round) % round || round;
    const at = (angle: number): [number, number] => [
      side * (x + radius * Math.cos(angle)),
      y + radius * Math.sin(angle),
    ];
    // In two, so that no bulge grows large.
    const bulge = side * Math.tan(turn / 8);
    const vertices = [
      [...at(from), bulge],
      [...at(from + turn / 2), bulge],
      [...at(from + turn), 0],
    ] as const;
    return { closed: false, vertices, layer: r.layer, place: r.place() };
  },
  LWPOLYLINE(r) {
    const side = r.side();
    const vertices: [number, number, number][] = [];
    for (const [code, text] of r.groups) {
      if (code === 10) vertices.push([side * r.parse(text, 10), Number.NaN, 0]);
      else if (code === 20 && vertices.length > 0) vertices.at(-1)![1] = r.parse(text, 20);
      else if (code === 42 && vertices.length > 0) vertices.at(-1)![2] = side * r.parse(text, 42);
    }
    if (vertices.some(([, y]) => Number.isNaN(y))) r.refuse('a corner has no y (group 20): export it again');
    return polyline(r, vertices, (r.whole(70) & 1) === 1);
  },
  POLYLINE(r, corners) {
    const flags = r.whole(70);
    if (flags & 4) r.refuse(REFUSED.SPLINE!);
    if (flags & (8 | 16 | 64)) r.refuse('it is drawn in space: flatten the drawing into the XY plane');
    const side = r.side();
    const vertices = corners.map((corner): OutlineVertex => {
      const c = new Reader(corner);
      return [side * c.number(10), c.number(20), side * c.number(42, 0)];
    });
    return polyline(r, vertices, (flags & 1) === 1);
  },
  ELLIPSE(r) {
    const span = Math.abs(r.number(42, 2 * Math.PI) - r.number(41, 0));
    if (Math.abs(span - 2 * Math.PI) > 1e-6) r.refuse('it is part of an ellipse: convert it to arcs');
    const ratio = r.number(40);
    if (!(ratio > 0.01 && ratio <= 1.000001)) r.refuse('it is too flat an ellipse: draw it as lines and arcs');
    return {
      centre: [r.number(10), r.number(20)],
      major: [r.number(11), r.number(21)],
      ratio,
      layer: r.layer,
      place: r.place(),
    };
  },
};

function radiusOf(r: Reader): number {
  const radius = r.number(40);
  if (!(radius > 0)) r.refuse(`its radius is ${radius}: delete it`);
  return radius;
}

function polyline(r: Reader, vertices: readonly OutlineVertex[], closed: boolean): Curve {
  if (vertices.length < 2) r.refuse(`it has ${vertices.length} corners: delete it`);
  return { closed, vertices, layer: r.layer, place: r.place() };
}
