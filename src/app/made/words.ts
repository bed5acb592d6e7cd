/** Parts by their trade's names. No React. */
import type { ShownPart } from './shape';

/** Beside its owner's name: "Stub 2". */
export const partName = ({ name }: Pick<ShownPart, 'name'>): string => capital(name);

export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** `Tube r1`; a collector that is called "collector" is not called so twice. */
export const ownerTitle = (what: string, id: string): string =>
  id.toLowerCase().startsWith(what.toLowerCase()) ? capital(id) : `${what} ${id}`;
