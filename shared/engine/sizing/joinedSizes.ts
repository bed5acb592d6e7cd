/** The formulas for secondaries and the collector, worded, sourced and fed from one set of inputs. mm. */
import { sweptVolume } from './gas';
import { inputsUsed, type Resolved } from './input';
import {
  AFTER_JOIN,
  coneLength,
  enclosing,
  equalAreaBore,
  OUTLET_SHARES,
  restOfLength,
  stepBore,
  tailBore,
} from './joinedPipes';
import { openingPeriodLength } from './primaryLengths';
import { SOURCES } from './sources';
import type { Estimate, UsedInput } from './types';

const found = (name: string, value: number): UsedInput => ({ name, value, unit: 'mm', assumed: false });

/** From the first join to the collector. @param whole the length to the collector if nothing joined before it */
export function secondaryLength(from: Resolved, whole: number): Estimate[] {
  return [
    {
      name: 'Rest of the opening-period rule',
      words: 'inches = opening-period length − 15',
      source: SOURCES.handbookLength,
      assumes: ['First pipes of 15 inches'],
      uses: inputsUsed(from, ['exhaustOpens', 'rpm']),
      bearing: 'size',
      mm: restOfLength(openingPeriodLength(from.exhaustOpens, from.rpm)),
    },
    {
      name: 'Rest of the whole length',
      words: 'length to the collector where nothing joins before it, less first pipes of 15 inches',
      source: SOURCES.pulseTime,
      assumes: ['The first join reflects little, the collector much'],
      uses: [found('Whole length', whole)],
      bearing: 'size',
      mm: restOfLength(whole),
    },
    {
      name: 'Twenty-four inches',
      words: 'inches = 24 behind the first join',
      source: SOURCES.portStep,
      assumes: ['Sports fours of its time'],
      uses: [],
      bearing: 'size',
      mm: AFTER_JOIN,
    },
  ];
}

/** @param bore inside the primaries */
export function secondaryBore(count: number, bore: number): Estimate[] {
  const uses = [found('Primary, inside', bore)];
  return [
    {
      name: 'Step of the handbook',
      words: 'bore = 0.93 × √(number joined × primary bore²)',
      source: SOURCES.handbookBore,
      assumes: count === 2 ? [] : ['The book speaks of pairs'],
      uses,
      bearing: 'size',
      mm: stepBore(bore, count),
    },
    equalArea(count, bore, uses),
  ];
}

/** The collector's outlet. @param count pipes that enter. @param bore inside them */
export function outletBore(from: Resolved, count: number, bore: number): Estimate[] {
  const uses = [found('Pipes entering, inside', bore)];
  const share = (name: string, part: number): Estimate => ({
    name,
    words: `bore = ${part.toFixed(2)} × √(number joined) × bore of the pipes that enter`,
    source: SOURCES.outletShare,
    assumes: count === 4 ? [] : ['Said of four; taken here as the same part of equal area'],
    uses,
    bearing: 'size',
    mm: part * equalAreaBore(bore, count),
  });
  return [
    {
      name: 'Tail pipe for length',
      words: 'inches = 2 × √(2 × cc of a cylinder / (25 × (opening-period length in inches + 3)))',
      source: SOURCES.handbookBore,
      assumes: ['The pipe behind the collector is as wide as its outlet'],
      uses: inputsUsed(from, ['bore', 'stroke', 'exhaustOpens', 'rpm']),
      bearing: 'size',
      mm: tailBore(sweptVolume(from.bore, from.stroke), openingPeriodLength(from.exhaustOpens, from.rpm)),
    },
    share('Outlet share, narrow', OUTLET_SHARES.least),
    share('Outlet share, wide', OUTLET_SHARES.most),
    equalArea(count, bore, uses),
  ];
}

/**
 * From the inlets to the outlet. @param count pipes that enter. @param bore inside them. @param outlet its bore
 */
export function collectorLength(from: Resolved, count: number, bore: number, outlet: number): Estimate[] {
  const [wide, narrow] = [enclosing(bore + 2 * from.wall, count), outlet + 2 * from.wall];
  const cone = (name: string, words: string, fullAngle: number): Estimate => ({
    name,
    words,
    source: SOURCES.cone,
    assumes: ['Inlets in a ring, touching'],
    uses: [found('Around the inlets', wide), found('Outlet, outside', narrow), ...inputsUsed(from, ['wall'])],
    bearing: 'size',
    mm: coneLength(wide, narrow, fullAngle),
  });
  return [
    cone('Cone of 15° full', 'length = (circle around the inlets − outlet) / (2 × tan 7.5°)', 15),
    cone('Cone of 15° half', 'length = (circle around the inlets − outlet) / (2 × tan 15°)', 30),
  ];
}

const equalArea = (count: number, bore: number, uses: readonly UsedInput[]): Estimate => ({
  name: 'Equal area',
  words: 'at most √(number joined) × bore of the pipes that enter',
  source: SOURCES.equalArea,
  assumes: ['All of them flowing at once, which they do not'],
  uses,
  bearing: 'at most',
  mm: equalAreaBore(bore, count),
});
