/** Masses as the design's unit goes: kg beside mm, pounds beside inches. */
import type { Display } from '../../../shared/design/types';

/** Exact, since 1959. */
const KG_PER_POUND = 0.45359237;

export const massUnit = (display: Display): string => (display === 'in' ? 'lb' : 'kg');

export const massFigure = (kg: number, display: Display): string =>
  (display === 'in' ? kg / KG_PER_POUND : kg).toFixed(2);

export const massWords = (kg: number, display: Display): string => `${massFigure(kg, display)} ${massUnit(display)}`;
