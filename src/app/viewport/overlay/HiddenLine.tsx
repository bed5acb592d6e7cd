/** Says quietly that the picture does not show everything, and brings it back. */
import type { Header } from '../../../../geometry';
import { useViewState } from '../../viewState';
import { countHidden } from '../hideable';
import { useHiding } from '../seen';

export function HiddenLine({ header }: { readonly header: Header }) {
  const count = countHidden(header, useHiding());
  const isolate = useViewState((s) => s.isolate);
  if (count === 0) return null;
  return (
    <p className="viewport-hidden">
      {count} hidden —{' '}
      <button type="button" className="link" onClick={() => isolate(null)}>
        show all
      </button>
    </p>
  );
}
