/** Prices of the workshop that nothing on the bill of materials is called by: a slip of the pen would count for nothing, unseen. */
import type { Workshop } from '../../../../shared/design/types';
import type { MaterialLine, Remark } from '../report';

export function priceRemarks(workshop: Workshop | undefined, materials: readonly MaterialLine[]): Remark[] {
  const names = materials.filter(({ ofStock }) => !ofStock).map(({ name }) => name);
  const lost = Object.keys(workshop?.prices ?? {}).filter((name) => !names.includes(name));
  return lost.map((name) => ({
    where: `workshop/prices/${name}`,
    message: `Nothing to be priced is called "${name}", so its price counts nowhere; the bill has ${names.length > 0 ? names.map((n) => `"${n}"`).join(', ') : 'nothing but tube'}.`,
    stops: false,
  }));
}
