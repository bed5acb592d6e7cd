/** Files that a shop folder is to hold and that cannot be made yet: named in every manifest, so that no one waits for them. */
import type { Header } from '../../geometry';
import type { NotMade } from './part';

const WHY = 'This version cannot make it yet.';

export function notYetMade({ design }: Header): NotMade[] {
  const files = [
    'stock.csv',
    'bill-of-materials.csv',
    'header.step',
    'header.3mf',
    'header.glb',
    ...(design.flanges ?? []).map(({ id }) => `flange-${id}.dxf`),
    ...design.merges.map(({ id }) => `copes/*.svg and packet.pdf, templates of collector ${id}`),
    ...(design.flanges ?? []).map(({ id }) => `packet.pdf, flange ${id}`),
  ].map((name) => ({ name, why: WHY }));
  const shells = [
    ...(design.flanges ?? []).map(({ id }) => `header.stl, flange ${id}`),
    ...design.merges.map(({ id }) => `header.stl, collector ${id}`),
  ].map((name) => ({ name, why: 'This version makes the tubes solid, not yet this part.' }));
  return [...files, ...shells];
}
