/** Laying the header, as actions. */
import type { Action } from '../actions/list/action';
import { documents } from '../document';
import { useJobs } from '../jobs';
import { hasWays } from './offer';
import { openLay, useLay } from './state';
import { toLay, whyNotLaid } from './wish';

/** Null where laying can be asked for. */
function whyNot(): string | null {
  const { settled } = documents.store.getState();
  if (!settled) return 'Open a design first';
  const running = useJobs.getState().running;
  if (running !== null && running !== 'lay') return 'Something else is still under way';
  return useLay.getState().search ? null : whyNotLaid(toLay(settled));
}
const ways = (): boolean => {
  const { settled } = documents.store.getState();
  return settled !== null && hasWays(settled);
};

export const routeActions: readonly Action[] = [
  {
    id: 'design.lay',
    name: 'Lay the header…',
    group: 'Design',
    keys: ['Shift+L'],
    also: 'route runners from nothing alternatives layouts anew new search',
    ready: () => whyNot() === null,
    why: () => whyNot() ?? '',
    run: () => openLay(),
  },
  {
    id: 'design.lay-anew',
    name: 'Lay anew, keeping the way the runners go…',
    group: 'Design',
    also: 'route again moved collector surrounding shape',
    ready: () => whyNot() === null && ways(),
    why: () => whyNot() ?? 'No runner is laid yet',
    run: () => openLay(true),
  },
];
