/** Lengths in mm or in: of the design that is open, or of one that is being begun. */
import type { Display } from '../../../shared/design/types';
import { useDisplay } from '../actions/display';

export function UnitSwitch({ onChoose }: { readonly onChoose: (unit: Display) => void }) {
  const display = useDisplay();
  return (
    <fieldset className="switch">
      <legend className="unseen">Lengths in</legend>
      {(['mm', 'in'] as const).map((unit) => (
        <button
          key={unit}
          type="button"
          aria-pressed={display === unit}
          aria-label={unit === 'mm' ? 'Millimetres' : 'Inches'}
          onClick={() => onChoose(unit)}
        >
          {unit}
        </button>
      ))}
    </fieldset>
  );
}
