/** Parts by their trade's names. No React. */
import type { PartRemark } from '../../../geometry';
import type { ShownPart } from './shape';

/** "Stub 2"; a plate that bolts to the head is called a flange. */
export const partName = ({ name, kind }: Pick<ShownPart, 'name' | 'kind'>): string =>
  capital(kind === 'flange' ? name.replace('plate', 'flange') : name);

export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** `Tube r1`; a collector that is called "left collector" is not called so twice. */
export const ownerTitle = (what: string, id: string): string =>
  id.toLowerCase().split(/\s+/).includes(what.toLowerCase()) ? capital(id) : `${what} ${id}`;

/** What is said of a part, under its name: neither a collector nor a port is named twice. */
export function remarkWords({ part, message }: Pick<PartRemark, 'part' | 'message'>): { title: string; words: string } {
  const [what = '', ...id] = part.split(' ');
  const [head = '', ...rest] = message.split(': ');
  const isNamed = rest.length > 0 && `${part} `.toLowerCase().startsWith(`${head} `.toLowerCase());
  return {
    title: id.length === 0 ? capital(part) : ownerTitle(capital(what), id.join(' ')),
    words: isNamed ? capital(rest.join(': ')) : message,
  };
}
