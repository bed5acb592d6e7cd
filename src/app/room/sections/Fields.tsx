/** Fields of the design as a whole, as its inspector has them. */
import { SpecField } from '../../inspect/SpecField';
import { type AnySpec, contextsOf } from '../../inspect/shared';
import type { Of } from './Section';

export function Fields({ design, header, specs }: Of & { readonly specs: readonly AnySpec[] }) {
  const contexts = contextsOf(design, header, [{ kind: 'design', id: '' }]);
  return (
    <div className="inspector room-fields">
      {specs.map((spec) => (
        <SpecField key={spec.at.join('/')} spec={spec} contexts={contexts} />
      ))}
    </div>
  );
}
