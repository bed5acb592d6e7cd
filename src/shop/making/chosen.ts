/** Of both ways that every tube is worked out in, the one that it is made by. */
import type { BentTube, Making, Way, WeldedTube } from './report';

export const madeWelded = (making: Pick<Making, 'groups' | 'welded'>): WeldedTube[] =>
  making.welded.filter(made(making, 'welded'));

export const madeBent = (making: Pick<Making, 'groups' | 'bent'>): BentTube[] =>
  making.bent.filter(made(making, 'bent'));

function made({ groups }: Pick<Making, 'groups'>, way: Way) {
  const own = new Set(groups.filter(({ chosen }) => chosen === way).map(({ tube }) => tube));
  return ({ tube }: { readonly tube: string }): boolean => own.has(tube);
}
