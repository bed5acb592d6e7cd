/**
 * A whole engine form from the few answers someone has at hand; everything else is common practice, to be changed, unless
 * a source is named. Lengths and diameters by textbook formulas are another matter: sizing puts them in afterwards.
 * mm, degrees; ports lie along +X with their middle at the origin, two banks stand at ±Y.
 */
import type { Opening, Tooling } from '../design/types';
import type { Vec3 } from '../vec3';
import { collectorSets } from './collectorSets';
import {
  type Arrangement,
  type BankForm,
  type CollectorForm,
  type EngineForm,
  joinedFirst,
  type TubeForm,
} from './form';
import { usualEngine } from './usualEngines';

/** Only `cylinders` must be answered. */
export type EngineAnswers = {
  readonly cylinders: number;
  /** How many banks; default: those of the banks listed, else 1 below eight cylinders, 2 from eight on. */
  readonly banks?: number | readonly (readonly number[])[];
  readonly firingOrder?: readonly number[];
  /** Between the banks' cylinder axes, degrees: the ports of a 90° engine look 45° down, those of a flat one straight down. */
  readonly vee?: number;
  readonly bore?: number;
  readonly stroke?: number;
  readonly rpm?: readonly [number, number];
  readonly pitch?: number;
  readonly arrangement?: Arrangement;
  /** Cylinders of each collector; default: one a bank, a straight six's front and rear three apart. */
  readonly collectors?: readonly (readonly number[])[];
  readonly opening?: Opening;
  readonly portAngle?: number;
  readonly outsideDiameter?: number;
  readonly wall?: number;
  readonly secondaryDiameter?: number;
  readonly length?: number | null;
  readonly secondaryLength?: number | null;
  readonly display?: 'mm' | 'in';
  readonly title?: string;
};

const MATERIAL = 'stainless-304';
/** Room between neighbouring bores for metal and water. */
const BETWEEN_BORES = 10;
const USUAL_PITCH = 92;
/** From the crankshaft's axis to the ports of each of two banks, sideways. */
const HALF_WIDTH = 240;
/** One bank's cylinders sit a rod's width ahead of the other's. */
const STAGGER = 20;
const TUBE = { outsideDiameter: 42.4, wall: 1.5 };
/** A collector's outlet over its inlets: one size up where two join, more where more do. */
const STEP_UP: Readonly<Record<number, number>> = { 1: 1, 2: 1.2, 3: 1.35 };

/** A form without problems where the answers allow it; a caller still asks `formProblems`. */
export function newForm(answers: EngineAnswers): EngineForm {
  const { cylinders, arrangement = 'all-into-one' } = answers;
  const listed = Array.isArray(answers.banks) ? (answers.banks as readonly (readonly number[])[]) : null;
  const bankCount = listed?.length ?? (answers.banks as number | undefined) ?? (cylinders < 8 ? 1 : 2);
  const usual = usualEngine(cylinders, bankCount);
  const bankLists = listed ?? usual?.banks ?? splitEvenly(cylinders, bankCount);
  const pitch = answers.pitch ?? (answers.bore ? answers.bore + BETWEEN_BORES : USUAL_PITCH);
  const banks = bankForms(bankLists, pitch, bankCount > 1 ? (answers.vee ?? usual?.vee ?? 90) : 0);
  const tube = { outsideDiameter: answers.outsideDiameter ?? TUBE.outsideDiameter, wall: answers.wall ?? TUBE.wall };
  const primary = tubeForm(tube.outsideDiameter, tube.wall, answers.length ?? null);
  const secondary =
    joinedFirst(arrangement) === null
      ? null
      : tubeForm(
          answers.secondaryDiameter ?? stepUp(tube.outsideDiameter, joinedFirst(arrangement)!),
          tube.wall,
          answers.secondaryLength ?? null,
        );
  const inlet = (secondary ?? primary).tube.outsideDiameter;
  return {
    title: answers.title ?? titleOf(cylinders, bankCount),
    display: answers.display ?? 'mm',
    cylinders,
    banks,
    firingOrder: answers.firingOrder ?? usual?.firingOrder ?? bankLists.flat().sort((a, b) => a - b),
    ...(answers.bore === undefined ? {} : { bore: answers.bore }),
    ...(answers.stroke === undefined ? {} : { stroke: answers.stroke }),
    ...(answers.rpm === undefined ? {} : { rpm: answers.rpm }),
    port: {
      opening: answers.opening ?? { shape: 'round', diameter: Math.round(tube.outsideDiameter - 2 * tube.wall) },
      angle: answers.portAngle ?? 0,
      lengthInHead: 80,
    },
    flange: { thickness: 10, gasket: 1.5, material: 'mild-steel', thread: 'M8', hole: 9, studLength: 35 },
    arrangement,
    primary,
    secondary,
    tolerance: 3,
    collectors: usualCollectors(banks, arrangement, inlet, answers.collectors),
    tubeToTube: 4,
  };
}

/**
 * Collectors where they usually hang: in front of and below their ports, leaning toward +X.
 * @param inlet outside diameter of the tubes that enter them
 * @param sets cylinders of each; default: one a bank, a straight six's two threes apart where none are joined first
 */
export function usualCollectors(
  banks: readonly BankForm[],
  arrangement: Arrangement,
  inlet: number,
  sets: readonly (readonly number[])[] = collectorSets(
    banks.map(({ cylinders }) => cylinders),
    arrangement,
  ),
): CollectorForm[] {
  const first = joinedFirst(arrangement);
  return sets.map((cylinders): CollectorForm => {
    const ports = banks.flatMap((bank) =>
      bank.cylinders.flatMap((c, i) =>
        cylinders.includes(c) ? [{ x: bank.firstPort[0] + i * bank.pitch, bank }] : [],
      ),
    );
    const { bank } = ports[0] ?? { bank: banks[0]! };
    const shared = ports.some((p) => p.bank !== bank);
    const middle = ports.reduce((sum, p) => sum + p.x, 0) / Math.max(1, ports.length);
    const spread = Math.max(0, ...ports.map((p) => Math.abs(p.x - middle)));
    const [, y, z] = bank.firstPort;
    // A level direction to stand off by, even where the ports look down.
    const side = shared ? 0 : Math.sign(bank.direction[1]) || Math.sign(y) || 1;
    const joins = first === null ? cylinders.length : cylinders.length / first;
    const below = first === null ? 260 + 0.5 * spread : 470 + 0.5 * spread;
    return {
      cylinders,
      position: [
        round(middle + 0.35 * spread + (first === null ? 60 : 140)),
        round(shared ? 0 : y + side * 200),
        round(z - below),
      ],
      axis: [0.4, 0, -1],
      outletDiameter: stepUp(inlet, joins),
      length: 120,
      outletJoint: 'slip',
    };
  });
}

function bankForms(lists: readonly (readonly number[])[], pitch: number, vee: number): BankForm[] {
  const half = (vee / 2) * (Math.PI / 180);
  return lists.map((cylinders, b): BankForm => {
    const side = b === 0 ? 1 : -1;
    const sideways = lists.length > 1 ? HALF_WIDTH : 0;
    const stagger = lists.length > 1 ? (side * STAGGER) / 2 : 0;
    // Square to the bank's cylinder axis, away from the other bank.
    const direction: Vec3 = [0, tidy(side * Math.cos(half)), tidy(-Math.sin(half))];
    const up: Vec3 = [0, tidy(side * Math.sin(half)), tidy(Math.cos(half))];
    return {
      cylinders,
      firstPort: [round((-(cylinders.length - 1) / 2) * pitch - stagger), side * sideways, 0],
      pitch,
      direction,
      up,
    };
  });
}

function tubeForm(outsideDiameter: number, wall: number, length: number | null): TubeForm {
  const tooling: Tooling = {
    making: 'welded',
    // A stock bend of one and a half diameters.
    centerlineRadius: round(1.5 * outsideDiameter),
    firstStraight: 20,
    betweenStraight: 20,
    lastStraight: 20,
    maxBendAngle: 170,
    maxBends: 4,
  };
  return { tube: { outsideDiameter, wall, material: MATERIAL }, tooling, length };
}

const stepUp = (inlet: number, joins: number): number => round(inlet * (STEP_UP[joins] ?? 1.5));

function splitEvenly(cylinders: number, banks: number): number[][] {
  const each = Math.ceil(cylinders / banks);
  // A count out of bounds is refused by its number; no list needs to be as long.
  const all = Array.from({ length: Math.min(cylinders, 12) || 0 }, (_, i) => i + 1);
  return Array.from({ length: banks }, (_, b) => all.slice(b * each, (b + 1) * each));
}

const NAMES = ['', 'Single', 'Twin', 'Three', 'Four', 'Five', 'Six', 'Seven', 'Eight'];
const titleOf = (cylinders: number, banks: number): string =>
  `${NAMES[cylinders] ?? `${cylinders} cylinders`}${banks > 1 ? ' in two banks' : ''}`;

const round = (x: number): number => Math.round(x * 10) / 10 + 0;
/** Six digits, and never −0: a form is read by people. */
const tidy = (x: number): number => Math.round(x * 1e6) / 1e6 + 0;
