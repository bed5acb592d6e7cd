/**
 * The engine that breathes through a gas path, as the solver takes it: every number there, SI units. Crank angles are degrees from
 * top dead centre of the cylinder's own exhaust stroke (the overlap), so it fires at ±360. Where a number came from: `assumed`.
 */

/** Poppet valves of one cylinder's side. */
export type ValveSetup = {
  readonly count: number;
  /** Head diameter, m. */
  readonly diameter: number;
  /** Lift over crank angle, from the last angle shut to the first one shut again, rising: degrees and m. */
  readonly lifts: readonly (readonly [angle: number, lift: number])[];
  /** Flow coefficient of the curtain area π·diameter·lift over lift/diameter, rising; held beyond its ends. */
  readonly flow: readonly (readonly [liftOverDiameter: number, coefficient: number])[];
};

/** Wiebe's law of heat release, xb = 1 − exp(−a θ^(m+1)) with a = 5, m = 2. */
export type BurnSetup = {
  /** Crank degrees after firing top dead centre at which half of it is burnt. */
  readonly middle: number;
  /** From 0 to 100 % of Wiebe's law, crank degrees. */
  readonly duration: number;
  /** Of the heat that the air can release: what is released. */
  readonly efficiency: number;
};

export type FuelSetup = {
  /** Lower heating value, J/kg. */
  readonly heat: number;
  /** kg of air that burn 1 kg of it. */
  readonly airPerFuel: number;
  /** Air over what the fuel needs: below 1 rich. */
  readonly lambda: number;
};

export type WallSetup = {
  /** Of piston, head and liner, K. */
  readonly temperature: number;
  /** Of Woschni's coefficient. */
  readonly factor: number;
};

/** Chen and Flynn: mean effective pressure = constant + perPeak × peak pressure + perSpeed × mean piston speed + perSquare × its square. Pa, s, m. */
export type FrictionSetup = {
  readonly constant: number;
  readonly perPeak: number;
  readonly perSpeed: number;
  readonly perSquare: number;
};

/** One runner a cylinder, from a plenum behind a throttle, or each open to the air. */
export type IntakeSetup = {
  /** Valve to plenum or mouth, m. */
  readonly runnerLength: number;
  /** m */
  readonly runnerDiameter: number;
  /** m³; null: each runner has a mouth of its own. */
  readonly plenumVolume: number | null;
  /** Effective area of throttle and filter together, m². Without a plenum: none. */
  readonly throttleArea: number;
  readonly wallTemperature: number;
  /** m */
  readonly roughness: number;
};

export type EngineSetup = {
  /** As the design numbers them. */
  readonly cylinders: readonly number[];
  /** Crank degrees at which each cylinder of `cylinders` fires, 0 to below 720; the first of the firing order at 0. */
  readonly fires: readonly number[];
  readonly firingOrder: readonly number[];
  /** m */
  readonly bore: number;
  readonly stroke: number;
  readonly rod: number;
  readonly compressionRatio: number;
  readonly intakeValve: ValveSetup;
  readonly exhaustValve: ValveSetup;
  readonly burn: BurnSetup;
  readonly fuel: FuelSetup;
  readonly walls: WallSetup;
  readonly friction: FrictionSetup;
  /** Of both valves' flow coefficients. */
  readonly flowFactor: number;
  readonly intake: IntakeSetup;
  readonly air: { readonly pressure: number; readonly temperature: number };
  /** rpm */
  readonly speeds: readonly [lowest: number, highest: number];
};

/** A number that nobody gave: which, what is taken, and why that. In the design's own units and words. */
export type Assumed = { readonly path: string; readonly name: string; readonly taken: string; readonly why: string };
