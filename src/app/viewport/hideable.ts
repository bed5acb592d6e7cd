/** What of a header can be hidden in the 3D view, and how much of it is. */
import type { Header, PartOwner } from '../../../geometry';
import { type HideKey, isHidden } from '../viewState';

export const hideableKeys = (header: Header): HideKey[] => [
  ...header.runners.map(({ runner }): HideKey => `runner/${runner.id}`),
  ...[...header.merges.keys()].map((id): HideKey => `merge/${id}`),
  ...(header.design.flanges ?? []).map(({ id }): HideKey => `flange/${id}`),
  ...header.surroundings.map(({ id }): HideKey => `surrounding/${id}`),
];

export const countHidden = (header: Header, state: Parameters<typeof isHidden>[0]): number =>
  hideableKeys(header).filter((key) => isHidden(state, key)).length;

/** What is formed at a port goes with the tube that it leads into. */
export function isOwnerHidden({ kind, id }: PartOwner, header: Header, state: Parameters<typeof isHidden>[0]): boolean {
  if (kind !== 'port') return isHidden(state, `${kind}/${id}`);
  const led = header.runners.filter(({ runner: { from } }) => 'port' in from && from.port === id);
  return led.every(({ runner }) => isHidden(state, `runner/${runner.id}`));
}
