/** A tube that nothing says how to bend yet cannot be run: offers tooling of the usual size. */
import { setFields } from '../../../../shared/design/edit';
import type { Design, Tooling } from '../../../../shared/design/types';
import { applyEdit } from '../applyEdit';

/** Stock bends of 1.5 × the outside diameter (common practice); meant to be changed. mm, degrees. */
const usual = (outsideDiameter: number): Tooling => ({
  making: 'welded',
  centerlineRadius: 1.5 * outsideDiameter,
  firstStraight: 20,
  betweenStraight: 10,
  lastStraight: 20,
  maxBendAngle: 170,
  maxBends: 4,
});

export function WithoutTooling({ design, tube }: { readonly design: Design; readonly tube: string }) {
  if (Object.hasOwn(design.tooling, tube)) return null;
  return (
    <div className="inspector-section">
      <h3>Bending</h3>
      <p className="note">Nothing says yet how this tube is bent, so no runner can be made of it.</p>
      <button
        type="button"
        className="button small"
        onClick={() =>
          applyEdit(
            (now) => setFields(now, [[['tooling', tube], usual(now.tubes[tube]!.outsideDiameter)]]),
            `Add tooling for tube ${tube}`,
          )
        }
      >
        Add tooling
      </button>
    </div>
  );
}
