/** From a remark to its place: a runner or tube is picked, the workshop is opened where the number stands. */
import { useLeaf } from '../leaf';
import { useSession } from '../session';
import { useMakeLook } from './look';

/** Scrolls its column alone: asked for by the element, the page itself would move too. */
function showWorkshop(): void {
  const section = document.querySelector('[data-section="workshop"]');
  const column = section?.closest('.side');
  if (!section || !column) return;
  const tabs = column.querySelector('.leaves')?.getBoundingClientRect().height ?? 0;
  column.scrollTop += section.getBoundingClientRect().top - column.getBoundingClientRect().top - tabs;
}

export function goToRemark(where: string): void {
  const [list, name] = where.split('/');
  const { select } = useSession.getState();
  if (list === 'workshop') {
    useMakeLook.getState().setOpen('workshop', true);
    // Once it is there.
    requestAnimationFrame(showWorkshop);
  } else if (list === 'runners' && name) select({ kind: 'runner', id: name });
  else if ((list === 'tooling' || list === 'tubes') && name) {
    select({ kind: 'tube', id: name });
    useLeaf.getState().ask('edit');
  }
}

/** What the press does, in a word or two; null where there is no place to go to. */
export function goWords(where: string): string | null {
  const [list, name] = where.split('/');
  if (list === 'workshop') return 'Workshop';
  if (list === 'runners' && name) return name;
  if ((list === 'tooling' || list === 'tubes') && name) return `Tube ${name}`;
  return null;
}
