/** Which asked lengths cannot be had, and what can, once that is known of the design: nothing while all is in reach. */
import { outOfReach } from '../../../geometry';
import { useDocument } from '../document';
import { sameSpace } from './sameSpace';
import { useWindows } from './useWindows';

export function OutOfReach() {
  const { windows, of } = useWindows();
  const design = useDocument((s) => s.settled);
  // What was found for another space would say the wrong thing.
  if (!windows || !of || !design || !sameSpace(of, design)) return null;
  return outOfReach(windows, design).map((sentence) => (
    <p key={sentence} className="fails">
      {sentence}
    </p>
  ));
}
