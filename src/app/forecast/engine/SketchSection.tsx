/** A header as lengths and bores alone: for when nothing is laid out yet, or to be held beside what is. */
import type { HeaderSketch } from '../../../../shared/design/types';
import { ARRANGEMENT_NAMES } from '../../arrangementNames';
import { documents, useDocument } from '../../document';
import { ChoiceField } from '../../inspect/ChoiceField';
import { usualPart } from '../ground';
import { SKETCH, SKETCH_SECONDARY } from './fields';
import { setAt } from './given';
import { Section } from './Section';
import { SetupField } from './SetupField';

export const ARRANGEMENTS: readonly { readonly value: HeaderSketch['arrangement']; readonly name: string }[] =
  Object.entries(ARRANGEMENT_NAMES).map(([value, name]) => ({ value: value as HeaderSketch['arrangement'], name }));

export function SketchSection() {
  const sketch = useDocument((s) => s.settled?.exhaust?.sketch);
  const give = () => {
    const { settled } = documents.store.getState();
    const part = settled && usualPart('exhaust/sketch', settled);
    if (part) setAt('exhaust/sketch', part, 'Sketch a header');
  };
  const arrange = (value: string): string | null => {
    const arrangement = value as HeaderSketch['arrangement'];
    if (!sketch) return null;
    const { secondary, ...rest } = sketch;
    // Where pipes are joined twice there are pipes between: as a start, of the primaries' kind and half their length.
    const between = secondary ?? { length: sketch.primary.length / 2, bore: sketch.primary.bore * 1.15 };
    const next =
      arrangement === 'all-into-one' ? { ...rest, arrangement } : { ...rest, arrangement, secondary: between };
    return setAt('exhaust/sketch', next, 'Join the sketch another way');
  };
  return (
    <Section title="Sketch of a header">
      {sketch ? (
        <>
          <div data-path="exhaust/sketch/arrangement">
            <ChoiceField
              label="Joined"
              meaning="how primaries come together"
              value={sketch.arrangement}
              choices={ARRANGEMENTS}
              onCommit={arrange}
            />
          </div>
          {[...SKETCH, ...(sketch.arrangement === 'all-into-one' ? [] : SKETCH_SECONDARY)].map((field) => (
            <SetupField key={field.path} {...field} />
          ))}
          <button
            type="button"
            className="button small"
            onClick={() => setAt('exhaust/sketch', undefined, 'Take the sketch away')}
          >
            Take it away
          </button>
        </>
      ) : (
        <div data-path="exhaust/sketch">
          <p className="quiet">
            Lengths and bores alone, followed beside the header or before there is one. It starts from what is laid out,
            else from rules of thumb.
          </p>
          <button type="button" className="button small" onClick={give}>
            Sketch a header
          </button>
        </div>
      )}
    </Section>
  );
}
