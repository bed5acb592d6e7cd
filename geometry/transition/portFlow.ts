/**
 * What a runner's port opens into, as its transition or its bare end makes it: sizes on either side, and how far the one
 * stands proud of the other. Areas to compare by, mm², and lengths, mm.
 */
import type { Transition } from '../../shared/design/types';
import type { Header, ResolvedRunner } from '../header/resolve';
import { stepDepthAt } from '../parts/tubeParts';
import { circleSection, openingSection, reaches, type Section, sectionArea } from './section';
import type { TransitionShape } from './surfaces';
import { type Words, wordsIn } from './words';

export type PortFlow = {
  readonly port: string;
  readonly runner: ResolvedRunner;
  readonly opening: Section;
  readonly transition: Transition | undefined;
  /** Of the tube. */
  readonly bore: number;
  readonly openingArea: number;
  readonly boreArea: number;
  /** How far the opening reaches beyond the bore: across, along up, and at its corners; negative within it. */
  readonly beyond: readonly [across: number, up: number, corner: number];
  /** Of the flange's step that a transition reaches into; 0 where it is flush. */
  readonly stepDepth: number;
  /** How its sizes are said. */
  readonly words: Words;
};

/** Null where no runner starts at the port. */
export function portFlow(header: Header, portId: string): PortFlow | null {
  const resolved = header.ports.get(portId);
  const runner = header.runners.find(({ runner: { from } }) => 'port' in from && from.port === portId);
  if (!resolved || !runner) return null;
  const opening = openingSection(resolved.port.opening);
  const bore = runner.tube.outsideDiameter - 2 * runner.tube.wall;
  const [across, up, corner] = reaches(opening);
  return {
    port: portId,
    runner,
    opening,
    transition: resolved.port.transition,
    bore,
    openingArea: sectionArea(opening),
    boreArea: sectionArea(circleSection(bore)),
    beyond: [across - bore / 2, up - bore / 2, corner - bore / 2],
    stepDepth: stepDepthAt(header, portId),
    words: wordsIn(header.design.display),
  };
}

/** What is to be made; null where the port has no transition. */
export function transitionShape({ transition, runner, opening, bore, stepDepth }: PortFlow): TransitionShape | null {
  if (!transition) return null;
  const { wall: tubeWall } = runner.tube;
  const { length, wall = tubeWall } = transition;
  return { opening, bore, length, wall, tubeWall, sleeve: stepDepth };
}

export const radiusOf = (area: number): number => Math.sqrt(area / Math.PI);
