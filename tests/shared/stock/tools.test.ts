/**
 * Sockets against the diameters in use (key wr.socket, from memory, ±1) and the conservative clearance that a table gives them
 * (key wr.pitch, read in source); nuts against ISO 4032 (key hex.iso, read in source). All else about tools is common practice. mm.
 */
import { expect, it } from 'vitest';
import { hexSize } from '../../../shared/stock/hexFasteners';
import { isToolKind, socketSize, TOOL_KINDS } from '../../../shared/stock/tools';
import { published } from '../../reference/published';

const NUTS = published<Record<string, [number, number, number]>>('hex.iso');

it.each(Object.keys(NUTS))('%s: across flats, across corners and height as published', (thread) => {
  const { acrossFlats, acrossCorners, nutHeight } = hexSize(thread, 9);
  expect([acrossFlats, acrossCorners, nutHeight]).toEqual(NUTS[thread]);
});

it('beyond the table a hexagon keeps its shape', () => {
  const { acrossFlats, acrossCorners } = hexSize('3/8-16', 10.3);
  expect(acrossCorners * Math.cos(Math.PI / 6)).toBeCloseTo(acrossFlats, 9);
});

it.each(Object.entries(published<Record<string, number>>('wr.socket')))('a socket of %s', (size, diameter) => {
  expect(Math.abs(socketSize(Number(size), false).diameter - diameter)).toBeLessThanOrEqual(1);
});

it('sockets between and beyond the sizes known grow with their hexagon, and never past the clearance published', () => {
  const sizes = Array.from({ length: 30 }, (_, k) => 7 + k / 2);
  const diameters = sizes.map((s) => socketSize(s, false).diameter);
  for (const [k, d] of diameters.entries()) expect(d).toBeGreaterThan(k === 0 ? sizes[0]! : diameters[k - 1]!);
  for (const [thread, [, clearance]] of Object.entries(published<Record<string, [number, number]>>('wr.pitch')))
    expect(socketSize(hexSize(thread, 9).acrossFlats, false).diameter).toBeLessThanOrEqual(clearance);
});

it('knows its own kinds and no other', () => {
  for (const kind of TOOL_KINDS) expect(isToolKind(kind)).toBe(true);
  expect(isToolKind('spanner')).toBe(false);
});
