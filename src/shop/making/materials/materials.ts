/** The bill of materials: every part once, those alike counted together, with what they weigh and cost. kg, the workshop's money. */
import type { Header, HeaderPart, PartKind } from '../../../../geometry';
import { materialOf } from '../../../../shared/stock/materials';
import { MM_PER_INCH } from '../../../../shared/units';
import type { MaterialLine } from '../report';
import { fasteners, type Single } from './fasteners';
import { partMass } from './weights';

/** Cut from bars and bends of the shelf or the buy list. */
const OF_STOCK: ReadonlySet<PartKind> = new Set(['tube', 'stub', 'outlet']);

const MADE_OF: Readonly<Record<PartKind, string>> = {
  flange: 'plate',
  transition: 'formed, from the opening to the tube',
  tube: 'tube',
  stub: 'tube, cut by its template',
  filler: 'fills the middle between tubes',
  plate: 'plate',
  cone: 'sheet, formed',
  outlet: 'tube',
  joint: 'at the outlet',
};

export function materialLines(header: Header, parts: readonly HeaderPart[]): MaterialLine[] {
  const prices = header.design.workshop?.prices ?? {};
  const things: (Single & { ofStock: boolean })[] = [
    ...parts.map((part) => ({
      name: nameOf(part),
      what: [MADE_OF[part.kind], materialOf(part.material ?? '')?.name ?? part.material].filter(Boolean).join(', '),
      mass: partMass(part),
      ofStock: OF_STOCK.has(part.kind),
    })),
    ...fasteners(header.design).map((thing) => ({ ...thing, ofStock: false })),
    ...wrapOf(header),
  ];
  const lines = new Map<string, MaterialLine>();
  for (const { name, what, mass, ofStock } of things) {
    const before = lines.get(name);
    const quantity = (before?.quantity ?? 0) + 1;
    const each = ofStock ? null : Object.hasOwn(prices, name) ? prices[name]! : null;
    lines.set(name, {
      name,
      what,
      quantity,
      ofStock,
      mass: before ? (before.mass === null || mass === null ? null : before.mass + mass) : mass,
      each,
      cost: each === null ? null : each * quantity,
    });
  }
  return [...lines.values()];
}

/** Stubs and plates of one collector or flange are alike by name; a tube is its runner's. */
const nameOf = ({ id, kind }: HeaderPart): string =>
  kind === 'stub' ? id.replace(/ stub \d+$/, ' stub') : kind === 'flange' ? id.replace(/ plate \d+$/, ' plate') : id;

function wrapOf({ design: { wrap, display }, runners }: Header): (Single & { ofStock: boolean })[] {
  if (!wrap) return [];
  const length = runners.reduce((sum, { runner, centerline }) => {
    const all = centerline?.length ?? 0;
    const some = runner.wrapped?.reduce((s, [from, to]) => s + Math.max(0, Math.min(to, all) - from), 0);
    return sum + (some ?? all);
  }, 0);
  if (!(length > 0)) return [];
  const layers = wrap.layers === 1 ? 'one layer' : `${wrap.layers} layers`;
  const along = display === 'in' ? `${(length / MM_PER_INCH / 12).toFixed(1)} ft` : `${(length / 1000).toFixed(2)} m`;
  return [{ name: 'heat wrap', what: `for ${along} of tube, ${layers}`, mass: null, ofStock: false }];
}
