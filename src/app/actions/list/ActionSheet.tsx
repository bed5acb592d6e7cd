/** The sheet over the page: a list to search and choose from, of all actions or of what one asks about; or the keys. */
import { useModal } from '../../parts/useModal';
import './list.css';
import { ActionList } from './ActionList';
import { KeySheet } from './KeySheet';
import { type Choice, closeSheet, useSheet } from './listState';
import { allActions } from './registry';

const ALL: Choice = {
  title: 'Actions',
  ask: 'Find an action',
  hint: 'What would you like to do?',
  none: 'No action goes by these words. Try fewer letters, or another word.',
  actions: allActions,
};

export function ActionSheet() {
  const open = useSheet((s) => s.open);
  const modal = useModal(Boolean(open), closeSheet);
  const choice = open === 'actions' ? ALL : open === 'keys' ? null : open;
  return (
    <dialog {...modal} className="sheet" aria-label={open === 'keys' ? 'Keys' : (choice ?? ALL).title}>
      {choice && <ActionList {...choice} key={choice.title} />}
      {open === 'keys' && <KeySheet />}
    </dialog>
  );
}
