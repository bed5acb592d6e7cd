/** The formulas for a primary, worded, sourced and fed from one set of inputs. mm from the valve seat. */
import { soundSpeed, sweptVolume } from './gas';
import { inputsUsed, type Resolved } from './input';
import { FARTHEST_JOIN, FIRST_PIPES } from './joinedPipes';
import { gasSpeedBore, lengthMatchedBore, MEAN_GAS_SPEED, portStepBore, torqueSpeedBore } from './primaryBores';
import { matchedLength, openingPeriodLength, outAndBackLength, quarterWaveLength } from './primaryLengths';
import { SOURCES } from './sources';
import type { Estimate } from './types';

const OPENING_PERIOD_WORDS = 'inches = 850 × (180 + degrees before the bottom at which the exhaust opens) / rpm − 3';

/** From the valve seat to the first place where the exhaust opens out, all cylinders meeting there. */
export function wholeLength(from: Resolved, bore: number): Estimate[] {
  const sound = soundSpeed(from.gasTemperature);
  const overlap = (from.intakeOpens + from.exhaustCloses) / 2;
  return [
    {
      name: 'Opening-period rule',
      words: OPENING_PERIOD_WORDS,
      source: SOURCES.handbookLength,
      assumes: ['Gas at the speed of sound its 850 stands for, about 520 m/s', 'Length from the valve seat'],
      uses: inputsUsed(from, ['exhaustOpens', 'rpm']),
      bearing: 'size',
      mm: openingPeriodLength(from.exhaustOpens, from.rpm),
    },
    {
      name: 'Out and back',
      words: 'length = speed of sound × time from pulse to wanted return / 2',
      source: SOURCES.pulseTime,
      assumes: [
        'One mean gas temperature along the pipe',
        'Gas standing still',
        'Full reflection where the pipes meet',
      ],
      uses: inputsUsed(from, ['returnAfter', 'gasTemperature', 'rpm']),
      bearing: 'size',
      mm: outAndBackLength(sound, from.returnAfter, from.rpm),
    },
    {
      name: 'Quarter wave',
      words:
        'length = speed of sound × swing / 4, less 0.61 of the bore’s radius; the second low of pressure at mid-overlap',
      source: SOURCES.quarterWave,
      assumes: ['Closed at the valve, open at the collector', 'One mean gas temperature', 'Weak waves in still gas'],
      uses: inputsUsed(from, ['exhaustOpens', 'exhaustCloses', 'intakeOpens', 'gasTemperature', 'rpm']),
      bearing: 'size',
      mm: quarterWaveLength(sound, from.exhaustOpens, overlap, from.rpm, bore),
    },
    {
      name: 'Inertia matching',
      words: 'speed of sound × degrees open / (12 × rpm × length) = 1, the length with its open end’s correction',
      source: SOURCES.matching,
      assumes: ['A small single with one plain pipe', 'Main order: long pipes, the gas column’s inertia'],
      uses: inputsUsed(from, ['exhaustOpens', 'exhaustCloses', 'gasTemperature', 'rpm']),
      bearing: 'size',
      mm: matchedLength(sound, from.exhaustCloses - from.exhaustOpens, from.rpm, bore),
    },
  ];
}

/** Where pairs or threes join first: the pipes up to that first join. */
export function firstPipeLength(from: Resolved): Estimate[] {
  const pairs = from.joinedFirst === 2 ? [] : ['The book speaks of pairs'];
  return [
    {
      name: 'First pipes of fifteen inches',
      words: 'inches = 15, whatever the engine',
      source: SOURCES.handbookLength,
      assumes: ['Length from the valve seat', ...pairs],
      uses: [],
      bearing: 'size',
      mm: FIRST_PIPES,
    },
    {
      name: 'Join within eighteen inches',
      words: 'the first join at most 18 inches from the valve, and not a lot less',
      source: SOURCES.portStep,
      assumes: ['Sports fours of its time', ...pairs],
      uses: [],
      bearing: 'size',
      mm: FARTHEST_JOIN,
    },
  ];
}

export function primaryBore(from: Resolved): Estimate[] {
  const cylinder = sweptVolume(from.bore, from.stroke);
  const ruled = openingPeriodLength(from.exhaustOpens, from.rpm);
  const sizes: Estimate[] = [
    {
      name: 'Bore for length',
      words: 'inches = 2.1 × √(cc of a cylinder / (25 × (opening-period length in inches + 3)))',
      source: SOURCES.handbookBore,
      assumes: ['The length of the opening-period rule, whatever length is built'],
      uses: inputsUsed(from, ['bore', 'stroke', 'exhaustOpens', 'rpm']),
      bearing: 'size',
      mm: lengthMatchedBore(cylinder, ruled),
    },
    {
      name: 'Torque-peak area',
      words: 'square inches = rpm × cubic inches of a cylinder / 88,200',
      source: SOURCES.torqueSpeed,
      assumes: ['The speed tuned for is the torque’s peak', 'A mean gas speed of 245 feet a second'],
      uses: inputsUsed(from, ['bore', 'stroke', 'rpm']),
      bearing: 'size',
      mm: torqueSpeedBore(cylinder, from.rpm),
    },
    {
      name: 'Mean gas speed',
      words: `bore area = piston area × mean piston speed / ${MEAN_GAS_SPEED} m/s`,
      source: SOURCES.gasSpeed,
      assumes: ['The port’s limit holds for the tube', 'Gas as dense as in the cylinder', 'At the highest speed'],
      uses: inputsUsed(from, ['bore', 'stroke', 'topRpm']),
      bearing: 'size',
      mm: gasSpeedBore(from.bore, from.stroke, from.topRpm),
    },
  ];
  if (from.portDiameter === null) return sizes;
  return [
    ...sizes,
    {
      name: 'Port and an eighth',
      words: 'at least the port’s diameter + 1/8 inch',
      source: SOURCES.portStep,
      assumes: ['A port that is no round hole counts by its area'],
      uses: inputsUsed(from, ['portDiameter']),
      bearing: 'at least',
      mm: portStepBore(from.portDiameter),
    },
  ];
}
