/** How the header moves in the space it stands in: the engine's roll in its mounts, and the tubes' growth with heat. */
import { angleNumber } from '../../format';
import { addHeat, addRock, removeHeat, removeRock } from '../edits';
import { HEAT_FIELDS, ROCK_FIELDS } from '../specs';
import { Fields } from './Fields';
import { Optional } from './Optional';
import { PoseSliders } from './PoseSliders';
import { type Of, Section } from './Section';

export function MotionSection(of: Of) {
  const { rock, heat } = of.design.motion ?? {};
  const says = [
    ...(rock ? [`rolls ${angleNumber(rock.angles[0])}° to ${angleNumber(rock.angles[1])}°`] : []),
    ...(heat ? [`to ${heat.temperature} °C`] : []),
  ].join(', ');
  return (
    <Section section="motion" name="Movement" says={says || 'stands still, cold'}>
      <p className="quiet">Gaps are the least over all of it.</p>
      <h3>Engine in its mounts</h3>
      <Optional
        given={rock !== undefined}
        add="Let the engine roll"
        usual="3° either way about the crank, in from the ports and below them: common practice, to be changed."
        onAdd={addRock}
        remove="Hold it still"
        onRemove={removeRock}
      >
        <Fields {...of} specs={ROCK_FIELDS} />
      </Optional>
      <h3>Heat</h3>
      <Optional
        given={heat !== undefined}
        add="Let the tubes grow"
        usual="To 650 °C, as primary tubes have it at full load: common practice, to be changed."
        onAdd={addHeat}
        remove="Keep the tubes cold"
        onRemove={removeHeat}
      >
        <Fields {...of} specs={HEAT_FIELDS} />
      </Optional>
      {of.design.motion && <PoseSliders motion={of.design.motion} />}
    </Section>
  );
}
