/** Parts by their trade's names. No React. */
import type { PartKind } from '../../../geometry';
import type { ShownPart } from './shape';

export const KIND_NAMES: Readonly<Record<PartKind, string>> = {
  flange: 'Flange',
  transition: 'Transition',
  tube: 'Tube',
  stub: 'Stub',
  filler: 'Filler',
  plate: 'Plate',
  cone: 'Cone',
  outlet: 'Outlet',
  joint: 'Joint',
};

/** Beside its owner's name: what its own name says beyond that, such as "Stub 2" of `collector m1 stub 2`. */
export function partName({ id, kind, of }: Pick<ShownPart, 'id' | 'kind' | 'of'>): string {
  const at = ` ${id} `.indexOf(` ${of.id} `, 1);
  const rest = at < 0 ? '' : id.slice(at + of.id.length).trim();
  return rest === '' ? KIND_NAMES[kind] : rest[0]!.toUpperCase() + rest.slice(1);
}
