/** A dialog that is up exactly while `open` holds, and that a press on its backdrop closes, as Escape does. */
import { type MouseEvent, type PointerEvent, type SyntheticEvent, useEffect, useRef } from 'react';

export function useModal(open: boolean, onClose: () => void) {
  const ref = useRef<HTMLDialogElement>(null);
  // The browser tells of a closed dialog a task later. It may be up again by then, and must not be taken down for what was.
  const own = useRef(0);
  useEffect(() => {
    const dialog = ref.current;
    if (open && !dialog?.open) dialog?.showModal();
    if (!open && dialog?.open) {
      own.current++;
      dialog.close();
    }
  }, [open]);
  // Text that is marked by dragging out of its field ends over the backdrop: that is no press on it.
  const pressed = useRef<EventTarget | null>(null);
  return {
    ref,
    onClose: () => {
      if (own.current > 0) own.current--;
      else onClose();
    },
    onPointerDown: (event: PointerEvent) => {
      pressed.current = event.target;
    },
    onClick: (event: MouseEvent) => {
      // The dialog's own box is its backdrop: what lies in it is its children's.
      if (event.target === ref.current && pressed.current === ref.current) onClose();
    },
  };
}

/** As `onCancel` of a dialog with fields: Escape gives up what is being typed first; the dialog closes on the next one. */
export function leaveFieldFirst(event: SyntheticEvent): void {
  const { activeElement } = document;
  if (!(activeElement instanceof HTMLInputElement) || activeElement.type !== 'text') return;
  event.preventDefault();
  activeElement.blur();
}
