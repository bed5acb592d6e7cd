/** The kept measurements, measured on the header as it is drawn; and taking what is picked anywhere while measuring is on. */
import { useEffect, useMemo } from 'react';
import { type Header, type MeasureAnswer, type Meshes, measureBetween } from '../../../geometry';
import { useHeader } from '../derived';
import { useDocument } from '../document';
import { useSession } from '../session';
import { type Measuring, useViewState } from '../viewState';
import { sameThing, thingOf } from './things';

export type Measured = Measuring & { readonly answer: MeasureAnswer };

/** Answers kept by measurement for as long as header and meshes are the same: several places ask. */
const kept = new WeakMap<Header, { meshes: Meshes; answers: WeakMap<Measuring, MeasureAnswer> }>();

function answerOf(header: Header, meshes: Meshes, m: Measuring): MeasureAnswer {
  let store = kept.get(header);
  if (store?.meshes !== meshes) {
    store = { meshes, answers: new WeakMap() };
    kept.set(header, store);
  }
  const known = store.answers.get(m);
  if (known) return known;
  const answer = measureBetween(header, m.a, m.b, meshes);
  store.answers.set(m, answer);
  return answer;
}

export function useMeasured(): readonly Measured[] {
  const header = useHeader();
  const meshes = useDocument((s) => s.meshes);
  const measured = useViewState((s) => s.measured);
  return useMemo(
    () => (header ? measured.map((m) => ({ ...m, answer: answerOf(header, meshes, m) })) : []),
    [header, meshes, measured],
  );
}

/** While measuring, whatever is picked in a table, the rack or the 3D view is taken as one of the two. */
export function useTakingPicks(): void {
  useEffect(
    () =>
      useSession.subscribe((now, before) => {
        if (now.selected === before.selected || !now.selected) return;
        const { measuring, from, take } = useViewState.getState();
        const thing = measuring ? thingOf(now.selected) : null;
        if (thing && !(from && sameThing(from, thing))) take(thing);
      }),
    [],
  );
}
