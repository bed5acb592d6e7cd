/**
 * Beside the pointer: how far, what was met, what resists, and the fields of exact entry. Text, so that it is read out,
 * typed into and kept in the picture.
 */
import { useCallback, useEffect, useRef, useState } from 'react';
import { DEGREES, dot, type Header } from '../../../../geometry';
import { angleNumber, signedNumber } from '../../format';
import { useHand } from '../../hand/hand';
import { type Field, fieldOf } from '../../shape/entry';
import { byOf, sketch } from '../../shape/grip';
import { handleName } from '../../shape/handle';
import { holds, sizeOf } from '../../shape/machine';
import { AXIS_WAYS } from '../../shape/pointer';
import { shaper, useShape } from '../../shape/shaper';
import type { Rig } from '../camera/rig';
import { project } from '../camera/view';
import { watchBoxes } from '../overlay/boxes';
import { putStyle, putVisible } from '../overlay/write';
import { tipOf } from './marks';

const NAMES: Readonly<Record<Field, string>> = { distance: 'Distance', x: 'X', y: 'Y', z: 'Z', angle: 'Angle' };
const OFF = 18;

export function HandTag({ rig, header }: { readonly rig: Rig; readonly header: Header }) {
  const state = useShape((s) => s);
  const resistance = useHand((s) => s.resistance);
  const loose = useHand((s) => s.loose);
  const box = useRef<HTMLDivElement | null>(null);
  const place = useRef(() => {});
  const [boxes] = useState(() => watchBoxes(() => place.current()));
  const keep = useCallback(
    (node: HTMLDivElement) => {
      box.current = node;
      return () => {
        box.current = null;
        boxes.forget(node);
      };
    },
    [boxes],
  );
  const hold = holds(state) ? state : null;
  const handle =
    hold?.grip.handle ??
    (state.phase === 'hovering' ? state.handle : state.phase === 'pressed' ? state.grip.handle : null);
  const refused = state.phase === 'pressed' && state.moved ? state.grip.refusal : null;
  const pointer = hold?.pointer != null ? hold.at : null;

  useEffect(() => {
    if (!handle) return;
    const show = () => {
      const node = box.current;
      if (!node) return;
      const size = rig.size();
      const grip = sketch(header, handle);
      const seen = pointer ?? (grip && project(rig.drawn(), size, grip.at));
      putVisible(node, seen !== null);
      if (!seen) return;
      const { width: w, height: h } = boxes.of(node);
      const x = seen[0] + OFF + w > size.width - 4 ? seen[0] - OFF - w : seen[0] + OFF;
      const y = Math.min(seen[1] + OFF, size.height - h - 8);
      putStyle(node, '--x', `${Math.max(4, Math.min(x, size.width - w - 4)).toFixed(0)}px`);
      putStyle(node, '--y', `${Math.max(4, y).toFixed(0)}px`);
    };
    place.current = show;
    show();
    return rig.listen(show);
  });

  if (!handle) return null;
  const refusal = refused ?? (hold ? null : (sketch(header, handle)?.refusal ?? null));
  return (
    <div ref={keep} className="hand-tag" role="status">
      {!hold && <b>{handleName(handle)}</b>}
      {!hold && <span className="quiet">{refusal ?? tipOf(handle)}</span>}
      {hold && state.phase !== 'typing' && <b className="size">{measure(hold)}</b>}
      {hold?.lock && <span className="quiet">along {hold.lock.toUpperCase()}</span>}
      {state.phase === 'typing' && <Fields />}
      {hold?.snapped && hold.snapped.words.length > 0 && <span className="met">{hold.snapped.words.join(', ')}</span>}
      {hold && loose && (
        <span className="quiet">Rules were broken before: drawn as asked. Balance mends what it can.</span>
      )}
      {hold && resistance && (
        <span className="stopped">
          {resistance.rules[0] ? `stopped by ${resistance.rules[0]}` : 'cannot go there'}
          {resistance.short > 0.05 &&
            `: ${signedNumber(resistance.short, hold.grip.display, 1).replace('+', '')} ${hold.grip.display} short`}
        </span>
      )}
    </div>
  );
}

function measure(hold: Extract<ReturnType<typeof shaper.state>, { amount: unknown }>): string {
  const size = sizeOf(hold.amount);
  if (hold.amount.kind === 'turn') return `${size > 0 ? '+' : ''}${angleNumber(size * DEGREES)}°`;
  const { display, motion } = hold.grip;
  // Along one line a move has a sign; in space it has none.
  const way = hold.lock ? AXIS_WAYS[hold.lock] : motion.kind === 'line' ? motion.way : null;
  const signed = way ? dot(byOf(hold.amount), way) : size;
  return `${signedNumber(signed, display, 1)} ${display}`;
}

function Fields() {
  const state = useShape((s) => s);
  const inputs = useRef(new Map<Field, HTMLInputElement>());
  const at = state.phase === 'typing' ? fieldOf(state.entry) : null;
  useEffect(() => {
    if (at) inputs.current.get(at)?.focus();
  }, [at]);
  if (state.phase !== 'typing') return null;
  const { entry, grip, amount } = state;
  return (
    <form
      className="hand-entry"
      aria-label={handleName(grip.handle)}
      onSubmit={(e) => {
        e.preventDefault();
        shaper.dispatch({ kind: 'enter' });
      }}
    >
      {entry.fields.map((field) => (
        <label key={field}>
          <span>{NAMES[field]}</span>
          <input
            ref={(node) => {
              if (node) inputs.current.set(field, node);
              else inputs.current.delete(field);
            }}
            value={entry.texts[field] ?? ''}
            placeholder={shown(field, amount, grip.display)}
            inputMode="text"
            autoComplete="off"
            spellCheck={false}
            aria-invalid={entry.problem !== null && field === at}
            onChange={(e) => shaper.dispatch({ kind: 'text', field, text: e.target.value })}
            onFocus={() => {
              for (let n = entry.fields.length; n > 0; n--) {
                const now = shaper.state();
                if (now.phase !== 'typing' || fieldOf(now.entry) === field) return;
                shaper.dispatch({ kind: 'field', step: 1 });
              }
            }}
          />
          <span className="unit">{field === 'angle' ? '°' : grip.display}</span>
        </label>
      ))}
      {entry.problem && <p role="alert">{entry.problem}</p>}
      <div className="hand-buttons">
        <button type="submit" disabled={entry.problem !== null}>
          Set
        </button>
        <button type="button" onClick={() => shaper.dispatch({ kind: 'cancel' })}>
          Leave
        </button>
      </div>
    </form>
  );
}

function shown(field: Field, amount: Parameters<typeof sizeOf>[0], display: 'mm' | 'in'): string {
  if (field === 'angle') return angleNumber(sizeOf(amount) * DEGREES);
  if (field === 'distance') return signedNumber(sizeOf(amount), display, 1).replace('+', '');
  return signedNumber(byOf(amount)['xyz'.indexOf(field)]!, display, 1);
}
