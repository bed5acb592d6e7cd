/**
 * Under a bend table: what the tube itself is, which a transition at the port or a flange's step makes start elsewhere than
 * the table, and whether it can be made at all. mm.
 */
import { cutObstacle, type Header, type ResolvedRunner, startTrim } from '../../../geometry';
import { useLeaf } from '../leaf';
import { Length } from '../parts/Length';

/** Of a runner that is laid: its bends may still have no room, or a transition may take more than its first straight. */
export const cannotBeMade = (header: Header, runner: ResolvedRunner): boolean =>
  runner.centerline !== null && cutObstacle(header, runner) !== null;

export const CANNOT_BE_MADE = 'Its tube cannot be made';

type Props = { readonly header: Header; readonly runner: ResolvedRunner };

export function TubeNote({ header, runner }: Props) {
  const line = runner.centerline;
  if (!line) return null;
  const missing = cannotBeMade(header, runner);
  const trim = missing ? 0 : startTrim(header, runner);
  return (
    <>
      {missing && (
        <p className="note">
          <span className="fails">{CANNOT_BE_MADE}</span>: see{' '}
          <button type="button" className="link" onClick={() => useLeaf.getState().ask('parts')}>
            Parts
          </button>
          .
        </p>
      )}
      <p className="note">
        {missing ? 'Centerline' : 'Tube'} <Length mm={line.length + trim} />
        {trim < 0 && (
          <>
            , plus <Length mm={-trim} /> transition
          </>
        )}
        {trim > 0 && (
          <>
            , of which <Length mm={trim} /> in the flange's step
          </>
        )}
        {runner.lengthInHead > 0 && (
          <>
            , plus <Length mm={runner.lengthInHead} /> in the head
          </>
        )}
        .{' '}
        {trim !== 0 && (
          <>
            The table counts from the flange's face; on the tube the first straight is{' '}
            <Length mm={line.straights[0]! + trim} />.{' '}
          </>
        )}
        Angles turn right-handed along the travel, before springback.
      </p>
    </>
  );
}
