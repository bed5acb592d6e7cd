/** The fields of one thing, or of several of one kind: edits of these go to all of them, in one step. */
import type { Header } from '../../../geometry';
import { placeOfThing, type Thing } from '../../../shared/design/edit';
import type { Design } from '../../../shared/design/types';
import { ThingExtras } from './extras/ThingExtras';
import { InspectorHead } from './InspectorHead';
import { SpecField } from './SpecField';
import { applies, contextsOf } from './shared';
import { SECTIONS } from './specs';
import { ThingProblems } from './ThingProblems';

type Props = { readonly design: Design; readonly header: Header; readonly things: readonly Thing[] };

export function Inspector({ design, header, things }: Props) {
  const [first] = things;
  if (!first) return null;
  return (
    // What is typed belongs to what is picked: another pick starts with empty drafts.
    <section className="panel inspector" aria-label="Edit" key={things.map(placeOfThing).join(' ')}>
      <InspectorHead design={design} things={things} />
      <ThingProblems things={things} />
      {SECTIONS[first.kind].map((section, i) => {
        const of = section.as ? things.map(({ id }): Thing => ({ kind: section.as!, id })) : things;
        const contexts = contextsOf(design, header, of);
        const fields = contexts.length < of.length ? [] : section.fields.filter((spec) => applies(spec, contexts));
        if (fields.length === 0) return null;
        return (
          <div className="inspector-section" key={section.title ?? i}>
            {section.title && <h3>{section.title}</h3>}
            {fields.map((spec) => (
              <SpecField key={spec.at.join('/')} spec={spec} contexts={contexts} />
            ))}
          </div>
        );
      })}
      {things.length === 1 && <ThingExtras design={design} header={header} thing={first} />}
    </section>
  );
}
