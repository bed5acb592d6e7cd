/** Clearance holes against ISO 273 (key I273, read in source: M6 6.4/6.6/7, M8 8.4/9/10, M10 10.5/11/12, M12 13/13.5/14.5). */
import { expect, it } from 'vitest';
import { HOLE_CLASSES, holeClassOf, holesFor } from '../../../shared/stock/holes';
import { published } from '../../reference/published';

it.each(['M6', 'M8', 'M10', 'M12'])('%s: fine, medium, coarse as published', (thread) => {
  expect(holesFor(thread)).toEqual(published<Record<string, number[]>>('i273')[thread]);
});

it('knows a thread by its size, pitch and capitals aside', () => {
  expect(holesFor('M8x1.25')).toEqual(holesFor('m8'));
  expect(holesFor('M80')).toBeUndefined();
  expect(holesFor('M8.5')).toBeUndefined();
  expect(holesFor('5/16-18')).toBeUndefined();
});

it('tells a hole’s series by its thread', () => {
  for (const [thread, holes] of Object.entries(published<Record<string, number[]>>('i273')))
    expect(holes.map((hole) => holeClassOf(thread, hole))).toEqual([...HOLE_CLASSES]);
  expect(holeClassOf('M8x1.25', 9)).toBe('medium');
  expect(holeClassOf('M8', 9.02)).toBeNull();
  expect(holeClassOf('M10', 9)).toBeNull();
  expect(holeClassOf('5/16-18', 9)).toBeNull();
});
