/**
 * A page of drawing, true size, for any writer: curves of straights and arcs, and text, black on white. mm, origin at the
 * page's top left, y down, as a reader's eye goes. Angles of curves turn from x to y, so clockwise to the eye; text turns
 * the other way, as people say it.
 */
import type { OutlineVertex } from '../../../shared/design/types';

export type Point = readonly [x: number, y: number];

export type Stroke = {
  readonly width: number;
  /** Drawn, left out, drawn …; absent: solid. */
  readonly dash?: readonly number[];
};

/** Corners with the bulge of the edge to the next, tan(turn / 4); where the curve is open, the last bulge says nothing. */
export type Curve = {
  readonly kind: 'curve';
  readonly vertices: readonly OutlineVertex[];
  readonly closed: boolean;
  readonly stroke?: Stroke;
  /** White covers what was drawn before. */
  readonly fill?: 'black' | 'white';
  /** For programs that read the drawing: what this curve is. */
  readonly name?: string;
};

export type Anchor = 'start' | 'middle' | 'end';

export type Text = {
  readonly kind: 'text';
  readonly text: string;
  /** On the baseline. */
  readonly at: Point;
  /** Height of the type's body; capitals are 0.72 of it. */
  readonly size: number;
  readonly anchor: Anchor;
  readonly bold: boolean;
  /** Degrees, counter-clockwise to the eye, about `at`. */
  readonly turn: number;
};

/** Items of another frame: moved, and cut off at a rectangle of the frame they are moved into. */
export type Group = {
  readonly kind: 'group';
  readonly move: Point;
  readonly clip?: Box;
  readonly items: readonly Item[];
};

export type Item = Curve | Text | Group;

export type Box = { readonly left: number; readonly top: number; readonly right: number; readonly bottom: number };

export type Drawing = { readonly width: number; readonly height: number; readonly items: readonly Item[] };

export const widthOf = (box: Box): number => box.right - box.left;
export const heightOf = (box: Box): number => box.bottom - box.top;
