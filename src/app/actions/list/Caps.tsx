/** Keys drawn as the caps that are pressed. */
import { keyCaps } from './keys';

export function Caps({ keys }: { readonly keys: string | undefined }) {
  if (!keys) return null;
  return (
    <span className="caps">
      {keyCaps(keys).map((cap) => (
        <kbd key={cap}>{cap}</kbd>
      ))}
    </span>
  );
}
