/** Asks before unsaved edits are left behind. */
import { useEffect, useRef } from 'react';
import { useLeaving } from '../actions/confirm';
import { saveDesign } from '../actions/save';

export function LeaveDialog() {
  const answer = useLeaving((s) => s.answer);
  const ref = useRef<HTMLDialogElement>(null);
  useEffect(() => {
    if (answer) ref.current?.showModal();
    else ref.current?.close();
  }, [answer]);
  return (
    <dialog ref={ref} className="leave" aria-labelledby="leave-title" onCancel={() => answer?.(false)}>
      <h2 id="leave-title">This design has edits that no file holds</h2>
      <p>Opening another lets them go.</p>
      <div className="leave-choices">
        <button type="button" className="button" onClick={() => answer?.(false)}>
          Keep it open
        </button>
        <button type="button" className="button" onClick={() => answer?.(true)}>
          Let them go
        </button>
        <button
          type="button"
          className="button strong"
          onClick={async () => {
            if (await saveDesign()) answer?.(true);
          }}
        >
          Save, then open
        </button>
      </div>
    </dialog>
  );
}
