/** What there is to lay, what is asked for to begin with, and when laying is offered unasked. */
import { describe, expect, it } from 'vitest';
import type { CheckReport } from '../../../geometry';
import type { Design, Runner } from '../../../shared/design/types';
import { offerFor } from '../../../src/app/route/offer';
import { designToLay, FIRST_WISH, laysAlike, toLay, whyNotLaid, wishFor } from '../../../src/app/route/wish';
import { inletWords, layoutWords } from '../../../src/app/route/words';
import { designWith, titled } from '../designs';
import { goingBy, layout } from './layouts';

const laid = goingBy(100);
const bare = designWith(undefined);
const withRunners = (design: Design, change: (runner: Runner) => Runner): Design => ({
  ...design,
  runners: design.runners.map(change),
});
const locked = withRunners(laid, (r) => ({ ...r, locked: true }));
const BROKEN: CheckReport = layout(0, 0, 1).report;

describe('what there is to lay', () => {
  it('counts runners, those that are locked and those without a way', () => {
    expect(toLay(laid)).toMatchObject({ runners: 1, locked: 0, unlaid: 0, given: 1 });
    expect(toLay(bare)).toMatchObject({ unlaid: 1 });
    expect(toLay(locked)).toMatchObject({ locked: 1, unlaid: 0, given: 0 });
  });

  it('says why nothing can be laid', () => {
    expect(whyNotLaid(toLay(laid))).toBeNull();
    expect(whyNotLaid(toLay(locked))).toMatch(/locked/);
    expect(whyNotLaid(toLay(titled('empty')))).toMatch(/no runners/);
  });

  it('keeps inlets that someone gave to runners without a way, and gives out those of laid runners', () => {
    expect(wishFor(bare, FIRST_WISH, false).inlets).toBe('given');
    expect(wishFor(laid, FIRST_WISH, false).inlets).toBe('free');
    expect(wishFor(laid, FIRST_WISH, true)).toMatchObject({ inlets: 'given', keepsShape: true });
    // There is no way to keep.
    expect(wishFor(bare, FIRST_WISH, true).keepsShape).toBe(false);
  });

  it('frees the inlets of all but locked runners, and touches nothing else', () => {
    const freed = designToLay(laid, { ...FIRST_WISH, inlets: 'free' });
    expect(freed.runners[0]!.to).toEqual({ merge: 'm1' });
    expect(freed.runners[0]!.points).toBe(laid.runners[0]!.points);
    expect(designToLay(locked, { ...FIRST_WISH, inlets: 'firing' }).runners[0]).toBe(locked.runners[0]);
    expect(designToLay(laid, { ...FIRST_WISH, inlets: 'given' })).toBe(laid);
  });

  it('knows what the router does not look at', () => {
    expect(laysAlike(laid, { ...laid, title: 'x', display: 'in' })).toBe(true);
    expect(laysAlike(laid, { ...laid, surroundings: [] })).toBe(false);
    expect(laysAlike(laid, { ...laid, runners: [...laid.runners] })).toBe(false);
  });
});

describe('the offer to lay', () => {
  it('comes where runners have no way', () => {
    expect(offerFor(bare, null, null)).toEqual({ kind: 'unlaid', count: 1 });
  });

  it.each(['merges', 'ports', 'surroundings'] as const)('comes where %s were changed and a rule broke', (part) => {
    const moved = { ...laid, [part]: [...(laid[part] ?? [])] };
    expect(offerFor(moved, laid, BROKEN)?.kind).toBe('changed');
    expect(offerFor(moved, laid, layout(0, 0).report)).toBeNull();
    expect(offerFor(moved, laid, null)).toBeNull();
  });

  it('does not come for other edits, nor where every runner is locked', () => {
    const retitled = { ...laid, title: 'x' };
    expect(offerFor(retitled, laid, BROKEN)).toBeNull();
    expect(offerFor(laid, null, BROKEN)).toBeNull();
    const moved = { ...locked, ports: [...locked.ports] };
    expect(offerFor(moved, locked, BROKEN)).toBeNull();
  });
});

describe('the words of a layout', () => {
  it('says bends, turning and room', () => {
    expect(layoutWords(layout(0, 123.44))).toBe('2 bends, 123.4° in all, least room 5.00 mm');
    expect(layoutWords({ ...layout(0, 90), margin: Number.POSITIVE_INFINITY, bends: 1 })).toBe('1 bend, 90.0° in all');
  });

  it('names inlets by cylinder in their order, those that differ apart from those that do not', () => {
    const design = (first: number, second: number): Design => ({
      ...laid,
      ports: [1, 3].map((cylinder) => ({ ...laid.ports[0]!, id: `p${cylinder}`, cylinder })),
      merges: ['pair', 'last', 'end'].map((id) => ({ ...laid.merges[0]!, id })),
      runners: [
        { id: 'r1', tube: 't', from: { port: 'p1' }, to: { merge: 'pair', inlet: first } },
        { id: 'r3', tube: 't', from: { port: 'p3' }, to: { merge: 'pair', inlet: second } },
        { id: 'a', tube: 't', from: { merge: 'pair' }, to: { merge: 'last', inlet: 2 } },
        { id: 'b', tube: 't', from: { port: 'p3' }, to: { merge: 'last', inlet: 1 } },
        { id: 'c', tube: 't', from: { merge: 'last' }, to: { merge: 'end', inlet: 1 } },
      ],
    });
    expect(inletWords([design(1, 2), design(2, 1)])).toEqual({
      each: ['pair: 1 3', 'pair: 3 1'],
      alike: 'last: 3, pair',
    });
    expect(inletWords([design(1, 2)])).toEqual({ each: [''], alike: 'pair: 1 3; last: 3, pair' });
    expect(inletWords([])).toEqual({ each: [], alike: '' });
  });
});
