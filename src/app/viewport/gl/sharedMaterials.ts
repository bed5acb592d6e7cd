/**
 * Materials shared by all that looks alike. Drawn one after the other, things of one material cost the graphics card's
 * driver no more than their places. They are few and small, are never changed, and stay for as long as the page does.
 */

/** @param make a material that follows from these few plain values alone */
export function sharedMaterials<A extends readonly (string | number | boolean)[], M>(
  make: (...look: A) => M,
): (...look: A) => M {
  const made = new Map<string, M>();
  return (...look) => {
    const key = look.join(' ');
    let material = made.get(key);
    if (!material) {
      material = make(...look);
      made.set(key, material);
    }
    return material;
  };
}
