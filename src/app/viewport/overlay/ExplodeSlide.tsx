/** How far apart the parts are drawn, while they are. In the strip of views; where that has no room, as a card. */
import { useViewState } from '../../viewState';

export function ExplodeSlide({ card = false }: { readonly card?: boolean }) {
  const exploded = useViewState((s) => s.exploded);
  const explode = useViewState((s) => s.explode);
  if (exploded === 0) return null;
  const slide = (
    <input
      type="range"
      aria-label="How far apart"
      min={5}
      max={100}
      value={Math.round(exploded * 100)}
      onChange={(e) => explode(Number(e.target.value) / 100)}
    />
  );
  if (!card) return <span className="explode-slide">{slide}</span>;
  return (
    <section className="explode-card" aria-label="Taken apart">
      <span>Apart</span>
      {slide}
      <button type="button" className="button" onClick={() => explode(0)}>
        Together
      </button>
    </section>
  );
}
