/** Two sliders that move the header in the picture, to see what its movement comes near. Nothing of the design changes. */
import './pieces.css';
import { useEffect, useId } from 'react';
import type { Motion } from '../../../../shared/design/types';
import { angleNumber } from '../../format';
import { type Posed, useRoomLook } from '../look';

const REST: Posed = { roll: 0, heat: 0 };

export function PoseSliders({ motion: { rock, heat } }: { readonly motion: Motion }) {
  const posed = useRoomLook((s) => s.posed) ?? REST;
  const set = useRoomLook((s) => s.set);
  // Another movement, or none: the header goes back to its place.
  // biome-ignore lint/correctness/useExhaustiveDependencies: when the movement is another
  useEffect(() => () => set({ posed: null }), [rock, heat, set]);
  const isMoved = posed.roll !== 0 || posed.heat !== 0;
  return (
    <>
      <h3>Look at it moved</h3>
      {rock && (
        <Slider
          name="Roll"
          value={posed.roll}
          min={Math.min(0, ...rock.angles)}
          max={Math.max(0, ...rock.angles)}
          step={0.1}
          says={`${posed.roll > 0 ? '+' : ''}${angleNumber(posed.roll)}°`}
          put={(roll) => set({ posed: { ...posed, roll } })}
        />
      )}
      {heat && (
        <Slider
          name="Heat"
          value={posed.heat}
          min={0}
          max={1}
          step={0.01}
          says={posed.heat === 0 ? 'cold' : posed.heat === 1 ? 'hot' : `${Math.round(100 * posed.heat)} % hot`}
          put={(part) => set({ posed: { ...posed, heat: part } })}
        />
      )}
      <div className="room-acts">
        <button type="button" className="button small" disabled={!isMoved} onClick={() => set({ posed: null })}>
          Back at rest
        </button>
      </div>
      <p className="note">In the picture only: nothing of the design changes.</p>
    </>
  );
}

type SliderProps = {
  readonly name: string;
  readonly value: number;
  readonly min: number;
  readonly max: number;
  readonly step: number;
  readonly says: string;
  readonly put: (value: number) => void;
};

function Slider({ name, says, put, ...range }: SliderProps) {
  const id = useId();
  return (
    <div className="room-play">
      <label htmlFor={id} className="room-slider-name">
        {name}
      </label>
      <input id={id} type="range" {...range} aria-valuetext={says} onChange={(e) => put(Number(e.target.value))} />
      <output htmlFor={id} className="room-slider-says number">
        {says}
      </output>
    </div>
  );
}
