/** A dialog that is up exactly while `open` holds, and that a press on its backdrop closes, as Escape does. */
import { type MouseEvent, useEffect, useRef } from 'react';

export function useModal(open: boolean, onClose: () => void) {
  const ref = useRef<HTMLDialogElement>(null);
  useEffect(() => {
    if (open && !ref.current?.open) ref.current?.showModal();
    if (!open) ref.current?.close();
  }, [open]);
  return {
    ref,
    onClose,
    onClick: (event: MouseEvent) => {
      // The dialog's own box is its backdrop: what lies in it is its children's.
      if (event.target === ref.current) onClose();
    },
  };
}
