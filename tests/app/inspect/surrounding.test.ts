/** What a chosen kind does to a surrounding: it proposes a clearance where none was typed, in the same step of history. */
import { beforeEach, describe, expect, it } from 'vitest';
import { addSurrounding, placeOfThing, segmentsOf } from '../../../shared/design/edit';
import type { Surrounding } from '../../../shared/design/types';
import { SURROUNDING_KINDS, surroundingKind } from '../../../shared/stock/surroundingKinds';
import { headerOf } from '../../../src/app/derived';
import { documents } from '../../../src/app/document';
import { applyEdit } from '../../../src/app/inspect/applyEdit';
import { type AnySpec, contextsOf, labelOf, pathOfField, setOn } from '../../../src/app/inspect/shared';
import { surroundingSections } from '../../../src/app/inspect/specs/surrounding';
import { titled } from '../designs';

const spec = (label: string) =>
  surroundingSections.flatMap((s) => s.fields).find((f) => f.label === label) as unknown as AnySpec;

beforeEach(() => {
  const { edited } = addSurrounding(titled('Four'), 'box');
  if (!edited.ok) throw new Error('not added');
  documents.open(edited.design, 'a.evenrun.json');
});

const box = (): Surrounding => documents.store.getState().settled!.surroundings!.at(-1)!;
const thing = () => ({ kind: 'surrounding', id: box().id }) as const;
function choose(label: string, value: unknown): string | null {
  const design = documents.store.getState().settled!;
  const things = [thing()];
  const contexts = contextsOf(design, headerOf(design), things);
  return applyEdit(
    (now) => setOn(now, headerOf(now), things, spec(label), value),
    labelOf(spec(label), contexts, value),
    pathOfField(things, spec(label)),
  );
}

describe('a kind chosen for a surrounding', () => {
  it('brings its clearance along where none was typed', () => {
    expect(choose('What it is', 'fuel-line')).toBeNull();
    expect(box()).toMatchObject({ kind: 'fuel-line', clearance: surroundingKind('fuel-line')!.clearance });
    expect(documents.store.getState().cause).toMatchObject({ kind: 'edit' });
    // Another kind replaces what was only proposed.
    choose('What it is', 'steering');
    expect(box().clearance).toBe(surroundingKind('steering')!.clearance);
  });

  it('leaves a typed clearance alone', () => {
    expect(choose('Clearance', 33)).toBeNull();
    choose('What it is', 'brake-line');
    expect(box()).toMatchObject({ kind: 'brake-line', clearance: 33 });
  });

  it('goes away without taking the clearance along', () => {
    choose('What it is', 'hose');
    choose('What it is', undefined);
    expect(box().kind).toBeUndefined();
    expect(box().clearance).toBe(surroundingKind('hose')!.clearance);
  });

  it('is one of the eight, none without room', () => {
    expect(SURROUNDING_KINDS.map(({ kind }) => kind)).toEqual([
      'structure',
      'steering',
      'brake-line',
      'wiring',
      'fuel-line',
      'hose',
      'plastic',
      'ground',
    ]);
    for (const { clearance, source } of SURROUNDING_KINDS) {
      expect(clearance).toBeGreaterThan(0);
      // Common practice has none.
      expect(source).toBeNull();
    }
    expect(segmentsOf(documents.store.getState().settled!, thing())).not.toBeNull();
    expect(placeOfThing(thing())).toContain(box().id);
  });
});
