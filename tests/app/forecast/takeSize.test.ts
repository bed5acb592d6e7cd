/** A size from the map into a design: laid out, without runners, joined otherwise. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { parseDesign } from '../../../shared/design/parse';
import type { Design } from '../../../shared/design/types';
import { nowOf } from '../../../src/app/forecast/sizes/mapOf';
import { takeSize } from '../../../src/app/forecast/sizes/takeSize';
import { engineSetup } from '../../../src/pulse/engine/setup';
import { ownOutlet, type StudySize } from '../../../src/pulse/forecast/studySizes';

const FOUR = parseDesign(readFileSync('public/examples/four-4-1.evenrun.json', 'utf8'));
const SIZE: StudySize = { arrangement: 'all-into-one', length: 712, outsideDiameter: 43, wall: 1.5, outlet: null };
const took = (design: Design, size = SIZE) => {
  const { edited, said } = takeSize(design, engineSetup(design).setup, size);
  if (!edited.ok) throw new Error(JSON.stringify(edited.refusal));
  return { design: edited.design, said };
};

describe('a size that is taken', () => {
  it('is what the primaries of a laid-out header are to have, and the sketch', () => {
    const { design, said } = took(FOUR);
    const primary = FOUR.runners.find(({ from }) => 'port' in from)!;
    expect(design.groups[primary.group!]!.length).toBe(712);
    expect(design.tubes[primary.tube]).toMatchObject({ outsideDiameter: 43, wall: 1.5 });
    expect(design.exhaust!.sketch!.primary).toEqual({ length: 712, bore: 40 });
    expect(design.runners).toEqual(FOUR.runners);
    expect(said).toMatch(/is balanced to them where that can be; else it keeps its shape/);
  });

  it('has its outlet at the last collector, and is what the map marks then', () => {
    const { design, said } = took(FOUR, { ...SIZE, outlet: 61 });
    expect(ownOutlet(design)).toBe(61);
    expect(ownOutlet(FOUR)).not.toBe(61);
    expect(design.exhaust!.sketch!.collector.bore).toBe(61);
    expect(said).toMatch(/the collector’s outlet, and the sketch/);
    expect(nowOf(design)).toEqual({ length: 0.712, bore: 0.04, arrangement: 'all-into-one', outlet: 0.061 });
    expect(took(FOUR).said).not.toMatch(/outlet/);
  });

  it('is the sketch where nothing is drawn', () => {
    const { design, said } = took({ ...FOUR, runners: [], merges: [] });
    expect(design.exhaust!.sketch!.primary.length).toBe(712);
    expect(design.groups).toEqual(FOUR.groups);
    expect(said).toBe('Taken as the sketch.');
  });

  it('joined otherwise than what is drawn is the sketch alone, and says why', () => {
    const { design, said } = took(FOUR, { ...SIZE, arrangement: 'pairs-then-one' });
    expect(design.groups).toEqual(FOUR.groups);
    expect(design.tubes).toEqual(FOUR.tubes);
    expect(design.exhaust!.sketch!.arrangement).toBe('pairs-then-one');
    expect(said).toMatch(
      /^Taken as the sketch alone: what is drawn joins “All into one”, this size “Pairs, then one”\. New… draws/,
    );
  });
});
