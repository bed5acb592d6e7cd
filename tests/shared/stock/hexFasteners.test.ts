/** Nuts across their corners against ISO 4032 (key hex.iso, read in source); washers by ISO 7089 are from memory. mm. */
import { expect, it } from 'vitest';
import { nutRoom, threadDiameter } from '../../../shared/stock/hexFasteners';
import { published } from '../../reference/published';

/** Across flats, across corners, height. */
const NUTS = published<Record<string, [number, number, number]>>('hex.iso');

it.each(Object.keys(NUTS))('%s: across corners as published, and the washer wider', (thread) => {
  const { nut, washer } = nutRoom(thread, 9);
  expect(nut).toBe(NUTS[thread]![1]);
  expect(washer).toBeGreaterThan(nut);
});

it('beyond the table, by the thread’s diameter, and without one by the hole', () => {
  expect(nutRoom('M14', 15.5)).toEqual({ nut: 1.8 * 14, washer: 28 });
  expect(nutRoom('3/8-16', 10.3).washer).toBeCloseTo(19.05, 9);
  expect(nutRoom('', 11).washer).toBeCloseTo(20, 9);
  // M8.5 is no M8.
  expect(nutRoom('M8.5', 9.4).nut).toBeCloseTo(15.3, 9);
});

it('reads metric and inch threads', () => {
  expect(['M8', 'm10x1.25', 'M 12', '5/16-18', '1/2', 'stud', '1/0'].map(threadDiameter)).toEqual([8, 10, 12, 7.9375, 12.7, null, null]); // biome-ignore format: one line
});
