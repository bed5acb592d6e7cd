/** Fit, the named views and the projection, as one quiet strip of words; each tooltip tells its key. */
import { type CameraWish, useSession } from '../../session';
import { FIT_KEY, PARALLEL_KEY, VIEWS } from '../camera/keys';

type Props = { readonly parallel: boolean; readonly onParallel: () => void };

export function ViewStrip({ parallel, onParallel }: Props) {
  const ask = useSession((s) => s.ask);
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
        onClick={onParallel}
      >
        Parallel
      </button>
    </div>
  );
}

const hintOf = (preset: string): string => {
  if (preset === 'corner') return 'From above one corner';
  if (preset === 'top') return 'From above';
  if (preset === 'bottom') return 'From below';
  return preset === 'front' || preset === 'back' ? `From the ${preset} of the engine` : `From the engine's ${preset}`;
};
