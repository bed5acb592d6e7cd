/** A refusal of the form in a sentence, with the field's own name in place of its path. */
import type { Refusal } from '../../../shared/design/refusal';
import { formFields } from '../../../shared/engine/formFields';

const NAMES: Readonly<Record<string, string>> = {
  firingOrder: 'Firing order',
  rpm: 'Speeds',
  arrangement: 'Arrangement',
  banks: 'Banks',
};

export function problemWords({ path, found, allowed }: Refusal): string {
  const collector = /^collectors\/(\d+)\/(position|axis|cylinders)/.exec(path);
  const place = { position: 'place', axis: 'direction', cylinders: 'cylinders' };
  const name =
    formFields(path)?.name ??
    (collector ? `Collector ${Number(collector[1]) + 1}, its ${place[collector[2] as keyof typeof place]}` : null) ??
    NAMES[path] ??
    path;
  return `${name}: found ${found}; allowed: ${allowed}.`;
}
