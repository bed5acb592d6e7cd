/**
 * What a mixture's components can be, by name: pure species, and gases of fixed composition made of them. Nothing reacts, so burnt
 * gas stays what it was when it formed (frozen): no dissociation when hot, no condensing when cold. SI units, per kg.
 */
import {
  argon,
  carbonDioxide,
  MOLAR_GAS_CONSTANT,
  nitrogen,
  oxygen,
  PETROL,
  petrolVapour,
  type Species,
  waterVapour,
} from './species';

export type Substance = {
  /** J/(kg K) */
  readonly gasConstant: number;
  /** cv, J/(kg K). */
  readonly heat: (temperature: number) => number;
};

type Part = readonly [species: Species, moles: number];

/** Dry air by moles, after the U.S. Standard Atmosphere 1976 (from memory), its traces counted as nitrogen. */
const AIR: readonly Part[] = [
  [nitrogen, 0.780874],
  [oxygen, 0.209476],
  [argon, 0.00934],
  [carbonDioxide, 0.00031],
];

/** Moles of dry air in which one mole of petrol burns with nothing left over. */
const AIR_PER_PETROL = (PETROL.carbon + PETROL.hydrogen / 4) / 0.209476;

const ofAir = (moles: number): Part[] => AIR.map(([species, share]) => [species, share * moles]);

const COMPOSITIONS = {
  air: AIR,
  /** What is left of petrol burnt in just enough dry air. */
  burnt: [
    ...ofAir(AIR_PER_PETROL).filter(([species]) => species !== oxygen),
    [carbonDioxide, PETROL.carbon],
    [waterVapour, PETROL.hydrogen / 2],
  ],
  /** Dry air with just enough petrol, all of it vapour: the drops that a real charge still carries are left out. */
  charge: [...ofAir(AIR_PER_PETROL), [petrolVapour, 1]],
  'fuel vapour': [[petrolVapour, 1]],
  nitrogen: [[nitrogen, 1]],
  oxygen: [[oxygen, 1]],
  argon: [[argon, 1]],
  'carbon dioxide': [[carbonDioxide, 1]],
  'water vapour': [[waterVapour, 1]],
} satisfies Record<string, readonly Part[]>;

export const substanceNames: readonly string[] = Object.keys(COMPOSITIONS);

/** @throws where the name is none of `substanceNames`: readers refuse that before */
export function substance(name: string): Substance {
  const parts = (COMPOSITIONS as Record<string, readonly Part[]>)[name];
  if (!parts) throw new Error(`no gas is called "${name}": there are ${substanceNames.join(', ')}`);
  let moles = 0;
  let mass = 0;
  for (const [species, amount] of parts) {
    moles += amount;
    mass += amount * species.molarMass;
  }
  return {
    gasConstant: (moles * MOLAR_GAS_CONSTANT) / mass,
    heat: (temperature) => {
      let sum = 0;
      for (const [species, amount] of parts) sum += amount * (species.molarHeat(temperature) - MOLAR_GAS_CONSTANT);
      return sum / mass;
    },
  };
}
