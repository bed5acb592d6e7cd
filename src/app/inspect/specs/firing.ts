/** How cylinders, banks and firing order are asked for, wherever they are: one set of words, and one way of reading and writing them. */
import { readBanks, readCylinders, writeBanks, writeCylinders } from '../../../../shared/design/edit';
import { CYLINDERS } from '../../../../shared/design/ranges';
import type { Reading } from './spec';

const orProblem = <V>(value: V | null, problem: string): Reading<V> =>
  value === null ? { ok: false, problem } : { ok: true, value };

export const CYLINDERS_FIELD = {
  label: 'Cylinders',
  quantity: 'count',
  range: CYLINDERS,
  meaning: 'a firing order of another number is taken away with it',
} as const;

export const BANKS_FIELD = {
  label: 'Banks',
  meaning: 'cylinders of each bank: 1-2-3-4 | 5-6-7-8',
  fallback: 'one',
} as const;

export const readBanksText = (text: string) =>
  orProblem(readBanks(text), 'Cylinder numbers are wanted, with a bar between banks: 1-2-3-4 | 5-6-7-8.');
export const banksText = writeBanks;

export const ORDER_FIELD = {
  label: 'Firing order',
  meaning: 'a full order of another number sets the cylinders too',
} as const;

export const readOrderText = (text: string) =>
  orProblem(readCylinders(text), 'Cylinder numbers are wanted, such as 1-3-4-2.');
export const orderText = writeCylinders;
