/** Asks in place what to do about a file that cannot simply be written: overwrite, ask for leave again, or save elsewhere. */
import { openPicked } from '../actions/open';
import { overwrite, saveAs, saveDesign } from '../actions/save';
import { useDocument } from '../document';
import { linesOf, tellFailure } from '../notices';
import { Icon } from '../panels/Icon';
import { putAside, QUESTION_WORDS, useQuestion } from './question';

export function FileQuestion() {
  const question = useQuestion((s) => s.question);
  const id = useDocument((s) => s.id);
  if (!question || question.id !== id) return null;
  const { link, standing } = question;
  const [what, then] = QUESTION_WORDS[standing](link.handle.name);
  const openBeside = async () => {
    putAside();
    try {
      await openPicked([{ file: await link.handle.getFile(), handle: link.handle }]);
    } catch (error) {
      tellFailure(`${link.handle.name} was not opened`, ...linesOf(error));
    }
  };
  return (
    <div className="keeping">
      <p>
        <strong>{what}</strong> {then}
      </p>
      {standing === 'changed' && (
        <>
          <button type="button" className="button" onClick={() => overwrite(link)}>
            Overwrite
          </button>
          <button type="button" className="button" onClick={openBeside}>
            Open what is there
          </button>
        </>
      )}
      {standing === 'refused' && (
        <button type="button" className="button" onClick={saveDesign}>
          Ask again
        </button>
      )}
      <button type="button" className="button" onClick={saveAs}>
        Save as…
      </button>
      <button type="button" className="button icon" aria-label="Put aside" onClick={putAside}>
        <Icon name="close" />
      </button>
    </div>
  );
}
