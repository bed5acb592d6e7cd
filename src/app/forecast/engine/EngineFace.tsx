/** The engine, what it breathes through, and what was measured on it: what is given, and what is taken where nobody gave it. */
import type { Refusal } from '../../../../shared/design/refusal';
import { setDisplay } from '../../actions/display';
import { useDocument } from '../../document';
import { HintLine } from '../../inspect/HintLine';
import { UnitSwitch } from '../../parts/UnitSwitch';
import { engineRefusals } from '../ground';
import { Refusals } from '../Refusals';
import { BaselineSection } from './BaselineSection';
import { FiringFields } from './FiringFields';
import { AIR, CAM_NOTES, CAST, COMBUSTION, CYLINDER, INTAKE, TAILPIPE, valveFields } from './fields';
import { PartSection } from './PartSection';
import { Section } from './Section';
import { SetupField } from './SetupField';
import { SketchSection } from './SketchSection';
import { UndoRow } from './UndoRow';

const NONE: readonly Refusal[] = [];

export function EngineFace() {
  const none = useDocument((s) => s.settled === null);
  const refusals = useDocument((s) => (s.settled ? engineRefusals(s.settled) : NONE));
  const readOnly = useDocument((s) => s.readOnly);
  if (none) return <p className="gain-none">Open a design first.</p>;
  return (
    <section className="gain-engine" aria-label="Engine">
      <div className="gain-engine-head">
        <p>
          What is not given is taken as engines usually are, and stands lightly in its field with the reason below. Type
          over it what you know; empty a field to go back. Every change is one step that can be taken back.
        </p>
        <UndoRow />
        <UnitSwitch onChoose={setDisplay} />
      </div>
      {readOnly && <p className="fails">Another tab works on this design: nothing can be changed here.</p>}
      {refusals.length > 0 && <Refusals refusals={refusals} />}
      <div className="gain-sections">
        <Section title="Cylinders">
          <FiringFields />
          {CYLINDER.map((field) => (
            <SetupField key={field.path} {...field} />
          ))}
        </Section>
        <PartSection
          title="Exhaust valve"
          path="engine/exhaustValve"
          fields={valveFields('exhaustValve')}
          note={CAM_NOTES.exhaustValve}
        />
        <PartSection
          title="Intake valve"
          path="engine/intakeValve"
          fields={valveFields('intakeValve')}
          note={CAM_NOTES.intakeValve}
        />
        <Section title="Intake">
          {INTAKE.map((field) => (
            <SetupField key={field.path} {...field} />
          ))}
        </Section>
        <Section title="Combustion">
          {COMBUSTION.map((field) => (
            <SetupField key={field.path} {...field} />
          ))}
        </Section>
        <Section title="Air outside">
          {AIR.map((field) => (
            <SetupField key={field.path} {...field} />
          ))}
        </Section>
        <PartSection title="Behind the header" path="exhaust/tailpipe" fields={TAILPIPE} />
        <PartSection title="Cast manifold" path="exhaust/cast" fields={CAST} />
        <SketchSection />
        <BaselineSection />
      </div>
      <HintLine />
    </section>
  );
}
