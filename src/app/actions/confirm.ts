/** Asking before unsaved edits are left behind. The dialog itself is panels/LeaveDialog; this is its state. */
import { create } from 'zustand';

type Leaving = { readonly answer: ((leave: boolean) => void) | null };

export const useLeaving = create<Leaving>()(() => ({ answer: null }));

/** True once the user says that the edits may go (or has saved them). */
export function confirmLeaving(): Promise<boolean> {
  useLeaving.getState().answer?.(false);
  return new Promise((resolve) => {
    useLeaving.setState({
      answer: (leave) => {
        useLeaving.setState({ answer: null });
        resolve(leave);
      },
    });
  });
}
