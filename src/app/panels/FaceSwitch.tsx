/** On a phone, one face of the job at a time; this picks it, under the thumb. */
import './faces.css';
import { useShownReport } from '../route/shown';

export const FACES = [
  { key: 'view', label: 'Header' },
  { key: 'rack', label: 'Rack' },
  { key: 'tables', label: 'Tables' },
  { key: 'room', label: 'Room' },
  { key: 'parts', label: 'Parts' },
  { key: 'make', label: 'Make' },
  { key: 'edit', label: 'Edit' },
  { key: 'past', label: 'Past' },
  { key: 'problems', label: 'Problems' },
] as const;

export type Face = (typeof FACES)[number]['key'];

type Props = { readonly face: Face; onFace(face: Face): void };

export function FaceSwitch({ face, onFace }: Props) {
  const count = useShownReport()?.problems.length ?? 0;
  return (
    <nav className="faces" aria-label="Show">
      {FACES.map(({ key, label }) => (
        <button key={key} type="button" aria-pressed={face === key} onClick={() => onFace(key)}>
          {label}
          {key === 'problems' && count > 0 && <span className="badge">{count}</span>}
        </button>
      ))}
    </nav>
  );
}
