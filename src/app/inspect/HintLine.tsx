/** Meaning and range of the field that has the focus, in one place that never moves what is being edited. */
import { useHint } from './fields/hint';

export function HintLine() {
  const hint = useHint((s) => s.hint);
  if (!hint || hint.text === '') return null;
  // Said already, as the field's own description.
  return (
    <p className="hint-line" aria-hidden="true">
      <strong>{hint.label}</strong> {hint.text}
    </p>
  );
}
