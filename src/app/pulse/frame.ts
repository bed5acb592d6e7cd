/** Where everything of the picture lies, px: panels, axes, words, legend. One plan for screen, crosshair and the saved file. */
import type { Rig } from '../../pulse/rig/types';
import { type EndWords, endWords } from './endWords';
import { type Panel, type Plan, planPanels } from './plan';
import { extentOf, type Picture } from './sample';

export const FONT = 12;
/** Left of the panels: the axis' name, its numbers. */
const LEFT = 58;
const RIGHT = 10;
/** Above them: names and the marks of probes. */
const TOP = 32;
const LINE = 16;
const LEGEND = 50;

export type Frame = {
  readonly plan: Plan;
  readonly left: number;
  readonly top: number;
  /** Of the panels. */
  readonly height: number;
  readonly width: number;
  readonly room: number;
  readonly wholeHeight: number;
  readonly extents: readonly (readonly [number, number])[];
  readonly ends: readonly EndWords[];
  /** How the words for both ends of a pipe stand below it: side by side, one below the other, or upright where neither has room. */
  readonly wording: readonly ('beside' | 'below' | 'upright')[];
  readonly legendTop: number;
};

/** @param textWidth px of a text at FONT */
export function framePicture(
  rig: Rig,
  picture: Picture,
  room: number,
  wholeHeight: number,
  textWidth: (text: string) => number,
): Frame {
  const extents = picture.pipes.map(extentOf);
  const plan = planPanels(
    extents.map(([from, to]) => to - from),
    room - LEFT - RIGHT,
  );
  const ends = picture.pipes.map(({ pipe }) => endWords(rig, pipe));
  const wording = ends.map(({ start, finish }, i) => {
    const [a, b, { width }] = [textWidth(start), textWidth(finish), plan.panels[i]!];
    return a + b + 10 <= width ? 'beside' : Math.max(a, b) <= width ? 'below' : 'upright';
  });
  const tall = ends.map(({ start, finish }, i) => {
    if (wording[i] === 'upright') return Math.max(textWidth(start), textWidth(finish)) + 4;
    return wording[i] === 'below' ? 2 * LINE : LINE;
  });
  const below = LINE + Math.max(...tall) + 6;
  return {
    plan,
    left: LEFT,
    top: TOP,
    height: Math.max(60, wholeHeight - TOP - below - LEGEND),
    width: Math.max(room, LEFT + plan.width + RIGHT),
    room,
    wholeHeight,
    extents,
    ends,
    wording,
    legendTop: wholeHeight - LEGEND + 4,
  };
}

/** Device pixels that a canvas may be wide. */
const WIDEST = 16_000;

/** Device pixels to one of ours: as wished, or as many as a canvas so wide may have. @param width px */
export const densityFor = (wished: number, width: number): number => Math.min(wished, WIDEST / width);

const panelOf = ({ plan }: Frame, pipe: number): Panel => plan.panels[pipe]!;

export function xToPx(frame: Frame, pipe: number, x: number): number {
  const { left, width } = panelOf(frame, pipe);
  const [from, to] = frame.extents[pipe]!;
  return frame.left + left + (width * (x - from)) / (to - from);
}

/** Time runs upward. */
export const timeToPx = ({ top, height }: Frame, time: number, duration: number): number =>
  top + height * (1 - time / duration);

export const pxToTime = ({ top, height }: Frame, y: number, duration: number): number =>
  duration * Math.min(1, Math.max(0, 1 - (y - top) / height));
