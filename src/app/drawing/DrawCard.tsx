/** Drawing, as a small card over the picture: which shape, what to do next, and the way out. */
import type { NewShape } from '../../../shared/design/edit';
import { Icon } from '../panels/Icon';
import { SHAPE_WORDS, SHAPES, startDrawing, stopDrawing } from './state';
import { useDraft } from './tool';
import { hintWords } from './words';

const capital = (word: string): string => word[0]!.toUpperCase() + word.slice(1);

export function DrawCard({ shape }: { readonly shape: NewShape }) {
  const hint = useDraft((s) => hintWords(shape, s.state));
  const begun = useDraft((s) => s.state.phase !== 'ready');
  return (
    <section className="draw-card" aria-label={`Draw a ${SHAPE_WORDS[shape]}`}>
      <div className="draw-head">
        <h2>Draw a {SHAPE_WORDS[shape]}</h2>
        <button
          type="button"
          className="button bare icon"
          aria-label="Stop drawing"
          title="Stop drawing (Escape)"
          onClick={stopDrawing}
        >
          <Icon name="close" />
        </button>
      </div>
      <fieldset className="switch" hidden={begun}>
        <legend className="unseen">What to draw</legend>
        {SHAPES.map((s) => (
          <button key={s} type="button" aria-pressed={s === shape} onClick={() => startDrawing(s)}>
            {capital(SHAPE_WORDS[s])}
          </button>
        ))}
      </fieldset>
      <p aria-live="polite">{hint}</p>
      <p className="quiet draw-mouse">Right button turns, wheel zooms, Alt leaves sizes unrounded, Escape goes back.</p>
      <p className="quiet draw-touch">Two fingers turn and zoom, and take a stroke back.</p>
      <p className="unseen">Without a pointer, add one on the Edit leaf and type its places.</p>
    </section>
  );
}
