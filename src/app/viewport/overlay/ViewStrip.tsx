/** Fit, the named views and the projection, and the view's tools, as one quiet strip of words; each tooltip tells its key. */
import { memo } from 'react';
import { ariaKeys, withKeys } from '../../actions/list/keys';
import { actionById } from '../../actions/list/registry';
import { type CameraWish, useSession } from '../../session';
import { useViewState } from '../../viewState';
import { FIT_KEY, PARALLEL_KEY, VIEWS } from '../camera/keys';
import { useIsCut } from '../cuts/CutFace';
import { ExplodeSlide } from './ExplodeSlide';

type Props = { readonly parallel: boolean };

export const ViewStrip = memo(function ViewStrip({ parallel }: Props) {
  const ask = useSession((s) => s.ask);
  const measuring = useViewState((s) => s.measuring);
  const isApart = useViewState((s) => s.exploded > 0);
  const isCut = useIsCut();
  const button = (word: string, key: string, hint: string, wish: CameraWish, name?: string) => (
    <button
      key={word}
      type="button"
      data-view={name}
      title={`${hint} (${key})`}
      aria-keyshortcuts={key}
      onClick={() => ask(wish)}
    >
      {word}
    </button>
  );
  return (
    <div className="viewport-strip" role="toolbar" aria-label="3D view">
      {button('Fit', FIT_KEY, 'Fit the header in the view', { kind: 'fit' })}
      <span className="gap" />
      {VIEWS.map(({ preset, word, key }) => button(word, key, hintOf(preset), { kind: 'preset', preset }, preset))}
      <span className="gap" />
      <button
        type="button"
        aria-pressed={parallel}
        aria-keyshortcuts={PARALLEL_KEY}
        title={`Without perspective, as on a drawing (${PARALLEL_KEY})`}
        onClick={() => useViewState.getState().setParallel(!parallel)}
      >
        Parallel
      </button>
      <span className="gap" />
      <Tool id="measure.start" word="Measure" pressed={measuring} />
      <Tool id="view.cut-x" word="Cut" pressed={isCut} wide />
      <Tool id="view.explode" word="Explode" pressed={isApart} />
      <ExplodeSlide />
      <Tool id="picture.save" word="Picture" wide />
    </div>
  );
});

type ToolProps = { readonly id: string; readonly word: string; readonly pressed?: boolean; readonly wide?: boolean };

/** An action as a button; `wide`: only where the strip has room, since the list of actions has it too. */
function Tool({ id, word, pressed, wide }: ToolProps) {
  const action = actionById(id);
  return (
    <button
      type="button"
      data-wide={wide}
      aria-pressed={pressed}
      aria-keyshortcuts={ariaKeys(action.keys)}
      title={withKeys(action.name, action.keys)}
      onClick={() => void action.run()}
    >
      {word}
    </button>
  );
}

const hintOf = (preset: string): string => {
  if (preset === 'corner') return 'From above one corner';
  if (preset === 'top') return 'From above';
  if (preset === 'bottom') return 'From below';
  return preset === 'front' || preset === 'back' ? `From the ${preset} of the engine` : `From the engine's ${preset}`;
};
