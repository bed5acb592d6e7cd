/** The header without what is hidden: what labels name, gaps are drawn for and a fit shows. */
import type { Header } from '../../../geometry';
import { isHidden, useViewState } from '../viewState';
import { countHidden, isOwnerHidden } from './hideable';

type Hiding = Parameters<typeof isHidden>[0];

/** The very same header where nothing is hidden, so that nothing is rebuilt for it. */
export function withoutHidden(header: Header, hiding: Hiding): Header {
  if (countHidden(header, hiding) === 0) return header;
  const flangeOf = (port: string) => header.design.flanges?.find(({ ports }) => ports.includes(port));
  return {
    ...header,
    // A port is seen by its flange or by what leads on from it.
    ports: new Map(
      [...header.ports].filter(([id]) => {
        const flange = flangeOf(id);
        return (
          !isOwnerHidden({ kind: 'port', id }, header, hiding) || (flange && !isHidden(hiding, `flange/${flange.id}`))
        );
      }),
    ),
    runners: header.runners.filter(({ runner }) => !isHidden(hiding, `runner/${runner.id}`)),
    merges: new Map([...header.merges].filter(([id]) => !isHidden(hiding, `merge/${id}`))),
    surroundings: header.surroundings.filter(({ id }) => !isHidden(hiding, `surrounding/${id}`)),
  };
}

export function useHiding(): Hiding {
  const hidden = useViewState((s) => s.hidden);
  const only = useViewState((s) => s.only);
  return { hidden, only };
}
