/** Parts by their trade's names. No React. */
import type { ShownPart } from './shape';

/** "Stub 2"; a plate that bolts to the head is called a flange. */
export const partName = ({ name, kind }: Pick<ShownPart, 'name' | 'kind'>): string =>
  capital(kind === 'flange' ? name.replace('plate', 'flange') : name);

export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** `Tube r1`; a collector that is called "collector" is not called so twice. */
export const ownerTitle = (what: string, id: string): string =>
  id.toLowerCase().startsWith(what.toLowerCase()) ? capital(id) : `${what} ${id}`;
