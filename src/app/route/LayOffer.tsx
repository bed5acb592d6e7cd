/** A small card that offers to lay what has no way yet, or what no longer holds since something it depends on was changed. */
import { useState } from 'react';
import type { Design } from '../../../shared/design/types';
import { useReport } from '../derived';
import { useDocument } from '../document';
import { useHistory } from '../history';
import { isAbout, useJobs } from '../jobs';
import { Icon } from '../panels/Icon';
import { type Offer, offerFor } from './offer';
import { openLay, useLay } from './state';
import { counted } from './words';

export function LayOffer() {
  const settled = useDocument((s) => s.settled);
  const gesture = useDocument((s) => s.gesture);
  const before = useHistory((s) => s.past.at(-1)?.design ?? null);
  const { report, of } = useReport();
  // What balance could not mend says so itself.
  const busy = useJobs((s) => s.running !== null || (s.balanced !== null && isAbout(s.balanced, settled)));
  const open = useLay((s) => s.open);
  const [declined, setDeclined] = useState<Design | null>(null);
  if (!settled || gesture !== null || busy || open || declined === settled) return null;
  const offer = offerFor(settled, before, of === settled ? report : null);
  if (!offer) return null;
  return (
    <section className="card lay-offer" aria-label="Lay the header" role="status">
      <p>{sentence(offer)}</p>
      <button type="button" className="button" onClick={() => openLay(offer.kind === 'changed')}>
        {offer.kind === 'changed' ? 'Lay anew…' : 'Lay the header…'}
      </button>
      <button type="button" className="button icon bare" aria-label="Dismiss" onClick={() => setDeclined(settled)}>
        <Icon name="close" />
      </button>
    </section>
  );
}

const sentence = (offer: Offer): string =>
  offer.kind === 'unlaid'
    ? `${counted(offer.count, 'runner is', 'runners are')} not laid yet.`
    : `${offer.what} was changed, and not every rule holds.`;
