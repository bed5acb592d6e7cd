/** Of both ways that every tube is worked out in, the one that it is made by. */
import type { BentTube, Making, Way, WeldedTube } from './report';

/** Where the design does not say: most home builders have no bender. */
export const DEFAULT_WAY: Way = 'welded';

/** @param tube its name in `tubes` */
export const chosenWay = ({ groups }: Pick<Making, 'groups'>, tube: string): Way =>
  groups.find((group) => group.tube === tube)?.chosen ?? DEFAULT_WAY;

export const madeWelded = (making: Pick<Making, 'groups' | 'welded'>): WeldedTube[] =>
  making.welded.filter(({ tube }) => chosenWay(making, tube) === 'welded');

export const madeBent = (making: Pick<Making, 'groups' | 'bent'>): BentTube[] =>
  making.bent.filter(({ tube }) => chosenWay(making, tube) === 'bent');
