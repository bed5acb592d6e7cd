/** What is being read of a mesh, over the page's top edge, with a way to stop it. */
import { useReading } from './reading';

export function ReadingLine() {
  const now = useReading((s) => s.now);
  if (!now) return null;
  return (
    <div className="keeping reading" role="status">
      <span>
        {now.doing} {now.name}
      </span>
      <progress value={now.part} max={1} aria-label={`Reading ${now.name}`} />
      <button type="button" className="button bare" onClick={now.stop}>
        Cancel
      </button>
    </div>
  );
}
