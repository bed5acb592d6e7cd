/** The sheet that mirrors a bank: which one, in what plane, the cylinders opposite, what comes along, and what will happen. */
import './mirror.css';
import { type FormEvent, useEffect, useMemo, useRef, useState } from 'react';
import { withAxis } from '../../../geometry';
import { CYLINDERS, DISTANCE } from '../../../shared/design/ranges';
import type { Design } from '../../../shared/design/types';
import { useDocument } from '../document';
import { ChoiceField } from '../inspect/ChoiceField';
import { always } from '../inspect/fields/always';
import { LengthField } from '../inspect/LengthField';
import { NumberField } from '../inspect/NumberField';
import { VectorField } from '../inspect/VectorField';
import { Icon } from '../panels/Icon';
import { leaveFieldFirst, useModal } from '../parts/useModal';
import { closeMirror, mirrorNow, useMirror } from './state';
import {
  apartOf,
  cylindersOf,
  firstWish,
  type MirrorWish,
  type Outcome,
  outcomeOf,
  type Place,
  surroundingsOf,
  usualCylinders,
  usualPoint,
  withApart,
  withBank,
} from './wish';

export function MirrorSheet() {
  const open = useMirror((s) => s.open);
  const design = useDocument((s) => s.settled);
  const modal = useModal(open, closeMirror);
  // After the dialog has chosen what to focus. Enter is enough where nothing is to be changed.
  useEffect(() => {
    if (open) modal.ref.current?.querySelector<HTMLElement>('button[type="submit"]')?.focus();
  }, [open, modal.ref]);
  return (
    <dialog {...modal} className="sheet mirror" aria-labelledby="mirror-title" onCancel={leaveFieldFirst}>
      {open && design && <Sheet design={design} />}
    </dialog>
  );
}

const REFUSED = 'One field holds what cannot be: mend it, or press Escape in it to have the old value back.';
/** A field that a refusal stands under. */
const MARKED = '.field:has(+ .mirror-problem) :is(input, select)';

type Part = {
  readonly design: Design;
  readonly wish: MirrorWish;
  put(wish: MirrorWish): void;
  readonly outcome: Outcome;
};

function Sheet({ design }: { readonly design: Design }) {
  const [wish, setWish] = useState(() => firstWish(design));
  const outcome = useMemo(() => outcomeOf(design, wish), [design, wish]);
  const body = useRef<HTMLDivElement>(null);
  useEffect(() => {
    if (!outcome.ok) body.current?.querySelector('.mirror-problem')?.scrollIntoView({ block: 'nearest' });
  }, [outcome]);
  // Said until the next change.
  const [refused, setRefused] = useState<MirrorWish | null>(null);
  const mirror = (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const unread = event.currentTarget.querySelector<HTMLElement>('[aria-invalid="true"]');
    const bad = unread ?? event.currentTarget.querySelector<HTMLElement>(MARKED);
    bad?.focus();
    setRefused(unread ? wish : null);
    if (!bad) mirrorNow(wish);
  };
  const part: Part = { design, wish, put: setWish, outcome };
  return (
    <form className="sheet-body" onSubmit={mirror} noValidate>
      <div className="sheet-search">
        <h2 id="mirror-title">Mirror a bank</h2>
        <button type="button" className="button bare icon" aria-label="Close" onClick={closeMirror}>
          <Icon name="close" />
        </button>
      </div>
      <div ref={body} className="mirror-body">
        <p className="quiet">
          Adds the image of a bank, seen in a plane: as long, runner by runner, and its bends turn the other way.
        </p>
        <BankChoice {...part} />
        <PlaneFields {...part} />
        <Opposites {...part} />
        <Surroundings {...part} />
      </div>
      <div className="mirror-foot">
        <p className="mirror-say" role="status">
          {refused === wish ? <span className="fails">{REFUSED}</span> : <WhatWill outcome={outcome} />}
        </p>
        <button type="button" className="button" onClick={closeMirror}>
          Cancel
        </button>
        <button type="submit" className="button strong">
          Mirror
        </button>
      </div>
    </form>
  );
}

function WhatWill({ outcome }: { readonly outcome: Outcome }) {
  if (outcome.ok)
    return (
      <>
        Adds {outcome.adds}. {outcome.engine}
      </>
    );
  const rest = outcome.problems.get('rest');
  return <span className="fails">{rest ?? 'Nothing is added yet: see what is marked above.'}</span>;
}

function Said({ outcome, place }: { readonly outcome: Outcome; readonly place: Place }) {
  const problem = outcome.ok ? undefined : outcome.problems.get(place);
  return problem === undefined ? null : (
    <p className="mirror-problem" role="status">
      {problem}
    </p>
  );
}

const ALL = 'all';

function BankChoice({ design, wish, put, outcome }: Part) {
  const banks = design.engine?.banks ?? [];
  if (banks.length < 2) return <Said outcome={outcome} place="bank" />;
  const hasPorts = (bank: readonly number[]) => design.ports.some((p) => bank.includes(p.cylinder));
  return (
    <section className="mirror-part">
      <ChoiceField
        label="Bank"
        value={wish.bank === null ? ALL : String(wish.bank)}
        choices={[
          ...banks.map((bank, i) => ({
            value: String(i + 1),
            name: `${i + 1}, cylinders ${bank.join(', ')}${hasPorts(bank) ? '' : ': no ports'}`,
            disabled: !hasPorts(bank),
          })),
          { value: ALL, name: 'All cylinders that have ports' },
        ]}
        onCommit={always((value) => put(withBank(wish, value === ALL ? null : Number(value))))}
      />
      <Said outcome={outcome} place="bank" />
    </section>
  );
}

function PlaneFields({ design, wish, put, outcome }: Part) {
  const usual = usualPoint(design, wish);
  const apart = apartOf(design, wish);
  const guessed = usual.guessed && wish.point === null;
  return (
    <section className="mirror-part" aria-labelledby="mirror-plane">
      <h3 id="mirror-plane">Plane midway between the banks</h3>
      <LengthField
        label="Bank to bank"
        meaning={`From flange face to flange face${guessed ? '; a guess: measure yours' : ''}`}
        range={DISTANCE}
        value={wish.point === null ? null : apart}
        fallback={apart ?? undefined}
        disabled={apart === null}
        onCommit={always((mm) => put(withApart(design, wish, mm)))}
        onClear={always(() => put({ ...wish, point: null }))}
        explain
      />
      <VectorField
        label="Through"
        meaning="Any point of the plane"
        quantity="length"
        value={wish.point}
        fallback={usual.point}
        onCommit={always((axis, value) => put({ ...wish, point: withAxis(wish.point ?? usual.point, axis, value) }))}
      />
      <Said outcome={outcome} place="plane" />
      <VectorField
        label="Square to"
        meaning="A direction; 0, 1, 0: the plane is upright, along the crankshaft"
        explain
        quantity="plain"
        value={wish.normal}
        onCommit={always((axis, value) => put({ ...wish, normal: withAxis(wish.normal, axis, value) }))}
      />
      <Said outcome={outcome} place="normal" />
    </section>
  );
}

function Opposites({ design, wish, put, outcome }: Part) {
  const cylinders = cylindersOf(design, wish);
  const usual = usualCylinders(design, wish);
  if (cylinders.length === 0) return null;
  return (
    <section className="mirror-part" aria-labelledby="mirror-opposite">
      <h3 id="mirror-opposite">Cylinder opposite</h3>
      <div className="mirror-opposites">
        {cylinders.map((c) => (
          <div key={c}>
            <NumberField
              label={`Opposite ${c}`}
              quantity="count"
              range={CYLINDERS}
              value={wish.cylinders.get(c) ?? usual.get(c)!}
              onCommit={always((to) => put({ ...wish, cylinders: new Map([...wish.cylinders, [c, to]]) }))}
            />
            <Said outcome={outcome} place={`cylinder ${c}`} />
          </div>
        ))}
      </div>
    </section>
  );
}

function Surroundings({ design, wish, put, outcome }: Part) {
  const all = design.surroundings ?? [];
  if (all.length === 0) return null;
  const chosen = surroundingsOf(design, wish);
  return (
    <section className="mirror-part" aria-labelledby="mirror-surroundings">
      <h3 id="mirror-surroundings">Surroundings mirrored too</h3>
      <div className="mirror-along">
        {all.map(({ id, shape }) => (
          <div key={id}>
            <label className={shape === 'mesh' ? 'quiet' : ''}>
              <input
                type="checkbox"
                checked={chosen.includes(id)}
                disabled={shape === 'mesh'}
                onChange={(event) =>
                  put({
                    ...wish,
                    surroundings: event.target.checked ? [...chosen, id] : chosen.filter((other) => other !== id),
                  })
                }
              />
              <span>{shape === 'mesh' ? `${id}: a mesh, not mirrored` : id}</span>
            </label>
            <Said outcome={outcome} place={`surrounding ${id}`} />
          </div>
        ))}
      </div>
    </section>
  );
}
