/** From designs to what is followed: every kind of run of an example, what bars one, what stands in for what nobody gave. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { setFields } from '../../../shared/design/edit';
import { parseDesign } from '../../../shared/design/parse';
import { DesignError } from '../../../shared/design/refusal';
import { assumedOf, browserGround, engineRefusals, usualPart } from '../../../src/app/forecast/ground';
import type { RunKind } from '../../../src/app/forecast/runs';
import { wishOf } from '../../../src/app/forecast/sizes/wish';

const example = (name: string) => parseDesign(readFileSync(`public/examples/${name}.evenrun.json`, 'utf8'));
const FOUR = example('four-4-1');
const BANK = example('v8-left-bank-4-1');
const primaries = (kind: RunKind, design = FOUR): number[] =>
  browserGround
    .subjectOf(kind, design)
    .path.pipes.filter(({ role }) => role === 'primary')
    .map(({ length }) => length);

describe('what is followed', () => {
  it('of a header that is laid out: itself, the cast manifold, equal lengths, joined the other way', () => {
    expect(browserGround.subjectOf('header', FOUR).title).toBe('This header');
    expect(primaries('header')).toHaveLength(4);
    const equal = primaries('equal');
    expect(Math.max(...equal) - Math.min(...equal)).toBeLessThan(1e-9);
    const uneven = primaries('uneven');
    expect(Math.max(...uneven) - Math.min(...uneven)).toBeCloseTo(0.05, 9);
    const other = browserGround.subjectOf('arrangement', FOUR).path.pipes;
    expect(other.filter(({ role }) => role === 'secondary')).toHaveLength(2);
    expect(browserGround.subjectOf('cast', FOUR).path.pipes.some(({ role }) => role === 'branch')).toBe(true);
  });

  it('at the same speeds for every run of one engine', () => {
    const [a, b] = (['header', 'cast'] as const).map((kind) =>
      browserGround.speedsOf(browserGround.subjectOf(kind, FOUR)),
    );
    expect(a).toEqual(b);
    expect(a![0]).toBe(FOUR.engine!.rpm![0]);
    expect(a!.at(-1)).toBe(FOUR.engine!.rpm![1]);
  });

  it('has the cylinders alone that are drawn, and says so', () => {
    const { engine, notes } = browserGround.subjectOf('header', BANK);
    expect(engine.cylinders).toHaveLength(4);
    expect(notes.join(' ')).toMatch(/alone/);
    expect(wishOf('d', BANK).engine.cylinders).toHaveLength(4);
  });

  it('is barred with its place: no sketch, another design that is not read', () => {
    const placesOf = (kind: RunKind) => {
      try {
        browserGround.subjectOf(kind, FOUR);
      } catch (error) {
        return (error as DesignError).problems.map(({ path }) => path);
      }
      return null;
    };
    expect(placesOf('sketch')).toEqual(['exhaust/sketch']);
    expect(placesOf('other/nowhere')).toEqual(['']);
    const { bore: _, ...engine } = FOUR.engine!;
    expect(engineRefusals({ ...FOUR, engine }).map(({ path }) => path)).toContain('engine/bore');
    expect(engineRefusals(FOUR)).toEqual([]);
    expect(() => browserGround.subjectOf('header', { ...FOUR, engine })).toThrow(DesignError);
  });
});

describe('what nobody gave', () => {
  it('is told once, all of what lies at one place too, and the design can be given it as it stands', () => {
    const assumed = assumedOf(FOUR);
    expect(new Set(assumed.map(({ path, name }) => `${path} ${name}`)).size).toBe(assumed.length);
    for (const kind of ['header', 'cast'] as const)
      for (const { path, name } of browserGround.subjectOf(kind, FOUR).assumed)
        expect(assumed, name).toContainEqual(expect.objectContaining({ path, name }));
    // Walls, heat law and friction law lie at `engine`, all three.
    expect(assumed.filter(({ path }) => path === 'engine').length).toBeGreaterThan(1);
    expect(assumed.some(({ path }) => path.startsWith('exhaust/cast'))).toBe(true);
    for (const path of [
      'engine/intakeValve',
      'engine/exhaustValve',
      'exhaust/tailpipe',
      'exhaust/cast',
      'exhaust/sketch',
    ]) {
      const part = usualPart(path, FOUR);
      const edited = setFields(FOUR, [[path.split('/'), part]]);
      expect(edited.ok, `${path} ${JSON.stringify(edited)}`).toBe(true);
      if (edited.ok) expect(assumedOf(edited.design).map(({ path: at }) => at)).not.toContain(path);
    }
  });

  it('given as it stands, changes no way of the gas by more than its rounding', () => {
    const edited = setFields(FOUR, [[['exhaust', 'tailpipe'], usualPart('exhaust/tailpipe', FOUR)]]);
    if (!edited.ok) throw new Error('refused');
    const [before, after] = [FOUR, edited.design].map((d) => browserGround.subjectOf('header', d).path.pipes);
    after!.forEach(({ length }, k) => {
      expect(Math.abs(length - before![k]!.length)).toBeLessThan(1e-5);
    });
  });
});
