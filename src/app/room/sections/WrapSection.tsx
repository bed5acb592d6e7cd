/** Heat wrap: what it is, where it ends so that tools still reach, and what stays bare and why. */
import './reach.css';
import { type WrapPlan, withWrapEnds } from '../../../../geometry';
import { stretchesOf, tapeLength } from '../../../shop/fitting/words';
import { useDisplay } from '../../actions/display';
import { lengthNumber } from '../../format';
import { Swatch } from '../../parts/Swatch';
import { usePaints } from '../../parts/usePaints';
import { pointing } from '../../parts/usePointing';
import { useAnswers } from '../answers';
import { act, addWrap, removeWrap } from '../edits';
import { useRoomLook } from '../look';
import { WRAP_FIELDS } from '../specs';
import { Fields } from './Fields';
import { Optional } from './Optional';
import { type Of, Pending, Section, Switch } from './Section';

export function WrapSection(of: Of) {
  const { wrap } = of.design;
  const known = useAnswers((s) => s.access);
  const drawn = useRoomLook((s) => s.wrapDrawn);
  const set = useRoomLook((s) => s.set);
  const display = useDisplay();
  const plans = known.value?.wrap ?? [];
  return (
    <Section
      section="wrap"
      name="Wrap"
      says={wrap ? `${lengthNumber(wrap.thickness * wrap.layers, display, 1)} ${display} thick` : 'none'}
      known={known}
    >
      <Optional
        given={wrap !== undefined}
        add="Wrap the header"
        usual="Two layers of 1.6 mm, from a roll that needs a gap of 20 mm: common practice, to be changed."
        onAdd={addWrap}
        remove="Take the wrap off"
        onRemove={removeWrap}
      >
        <Fields {...of} specs={WRAP_FIELDS} />
        <Switch on={drawn} name="Draw the wrap" onSwitch={(on) => set({ wrapDrawn: on })} />
        <Pending known={known} what="Looking where it may go" />
        <Ends plans={plans} working={known.working} />
        {plans.length > 0 && <PlanTable plans={plans} />}
      </Optional>
    </Section>
  );
}

const total = (stretches: WrapPlan['wrapped']): number => stretches.reduce((sum, [from, to]) => sum + to - from, 0);

/** Where what is wrapped is more than may be: the one step that ends it. */
function Ends({ plans, working }: { readonly plans: readonly WrapPlan[]; readonly working: boolean }) {
  const over = plans.filter((plan) => total(plan.wrapped) - total(plan.possible) > 0.5);
  if (plans.length === 0) return null;
  if (over.length === 0) return <p className="quiet">The wrap ends where tools, sensors and the roll need it.</p>;
  return (
    <div className="room-acts">
      <button
        type="button"
        className="button strong small"
        disabled={working}
        onClick={() =>
          act((now) => ({ ok: true, design: withWrapEnds(now, plans) }), 'End the wrap where tools need it')
        }
      >
        End the wrap where tools need it
      </button>
    </div>
  );
}

/** Stretch by stretch along each tube, as on paper: a tape laid along it finds where the wrap ends. */
function PlanTable({ plans }: { readonly plans: readonly WrapPlan[] }) {
  const display = useDisplay();
  return (
    <table className="room-wrap">
      <caption>What may be wrapped, along each tube from its start</caption>
      <thead>
        <tr>
          <th scope="col">Runner</th>
          <th scope="col" className="right">
            From <span className="unit">{display}</span>
          </th>
          <th scope="col" className="right">
            To <span className="unit">{display}</span>
          </th>
          <td />
        </tr>
      </thead>
      {plans.map((plan) => (
        <PlanRows key={plan.runner} plan={plan} />
      ))}
    </table>
  );
}

function PlanRows({ plan }: { readonly plan: WrapPlan }) {
  const display = useDisplay();
  const paint = usePaints().get(plan.runner);
  const stretches = stretchesOf(plan);
  return (
    <tbody>
      {stretches.map(({ from, to, bare }, i) => (
        <tr
          key={from}
          className="pick"
          {...pointing({ kind: 'runner', id: plan.runner })}
          tabIndex={i === 0 ? 0 : undefined}
        >
          {i === 0 && (
            <th scope="rowgroup" rowSpan={stretches.length}>
              {paint && <Swatch paint={paint} />} {plan.runner}
            </th>
          )}
          <td className="right number">{tapeLength(from, display).number}</td>
          <td className="right number">{tapeLength(to, display).number}</td>
          <td className={bare === null ? undefined : 'quiet'}>{bare === null ? 'wrapped' : `bare: ${bare}`}</td>
        </tr>
      ))}
    </tbody>
  );
}
