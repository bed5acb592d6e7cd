/** A dialog that is up exactly while `open` holds, and that a press on its backdrop closes, as Escape does. */
import { type MouseEvent, type PointerEvent, type SyntheticEvent, useEffect, useRef } from 'react';

export function useModal(open: boolean, onClose: () => void) {
  const ref = useRef<HTMLDialogElement>(null);
  useEffect(() => {
    if (open && !ref.current?.open) ref.current?.showModal();
    if (!open) ref.current?.close();
  }, [open]);
  // Text that is marked by dragging out of its field ends over the backdrop: that is no press on it.
  const pressed = useRef<EventTarget | null>(null);
  return {
    ref,
    onClose,
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
