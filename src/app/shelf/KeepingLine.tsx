/** One line under the toolbar while something stands in the way of keeping edits; nothing while all is well. */
import { useDocument } from '../document';
import { FileQuestion } from '../files/FileQuestion';
import { shelf, useShelf } from './browserShelf';
import { copyOpenDesign } from './copy';

export function KeepingLine() {
  const trouble = useShelf((s) => s.trouble);
  const { readOnly, refusals } = useDocument((s) => s);
  return (
    <div role="status">
      {readOnly && (
        // Drawn anew with each edit that was refused, so that it catches the eye then.
        <div className="keeping" key={refusals}>
          <p>
            <strong>Open in another tab.</strong> Nothing can be changed here until you take it over or work on a copy.
          </p>
          <button type="button" className="button" onClick={() => shelf.takeOver()}>
            Take it over
          </button>
          <button type="button" className="button" onClick={copyOpenDesign}>
            Work on a copy
          </button>
        </div>
      )}
      {trouble && (
        <div className="keeping">
          <p>
            <strong>{trouble.title[0]!.toUpperCase() + trouble.title.slice(1)}.</strong> {trouble.remedy}
          </p>
        </div>
      )}
      <FileQuestion />
    </div>
  );
}
