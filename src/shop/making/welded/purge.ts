/**
 * What must be said where the inside of a weld is purged, in words for paper and app. Common practice; that argon in confined
 * spaces kills by asphyxiation without warning, and damming for purging, as the UK HSE warns in "Asphyxiation hazards in welding and allied processes".
 */
import { DEFAULT_MATERIAL } from '../../../../geometry';

const NAMES = /^(stainless|titanium)/;

/** What is welded under argon on both sides. */
export const isPurged = (material: string = DEFAULT_MATERIAL): boolean => NAMES.test(material);

/** @returns null for what needs no purge */
export function purgeNote(material: string = DEFAULT_MATERIAL): string | null {
  if (!isPurged(material)) return null;
  const after = material.startsWith('titanium')
    ? ' Titanium must stay under argon inside and outside until it has cooled: use a trailing shield.'
    : '';
  return (
    `Purge the inside with argon while you weld: dam both ends of the tube, let the argon in at one, low down, and leave a vent hole at the other; wait until the air is out, and keep it flowing until the weld has lost its colour.${after} ` +
    'Argon takes the place of air and gives no warning: it has killed people in pits, tanks and closed rooms. Weld where air moves, never put your head into what is being purged, and vent it before you look inside. Where your welding procedure or a qualified welder says otherwise, that comes first.'
  );
}
