/** What the map of sizes is given: for each arrangement and outlet, sizes of the primaries and what each gives. SI units. */

export type MapSize = {
  /** Of a primary, valve to junction, m. */
  readonly length: number;
  /** Inside diameter of a primary, m. */
  readonly bore: number;
};

/** As it is bought, mm. */
export type MapTube = { readonly outsideDiameter: number; readonly wall: number };

/** `torque`: mean over the band, N m; null where it could not be followed, and why. */
export type MapCell = MapSize & { readonly torque: number | null; readonly failed?: string; readonly tube?: MapTube };

/** Where a rule of thumb points, and how far its published forms lie apart. Null: it says nothing of that. */
export type MapRule = {
  readonly name: string;
  readonly source: string;
  readonly length: RuleRange | null;
  readonly bore: RuleRange | null;
};
export type RuleRange = { readonly low: number; readonly middle: number; readonly high: number };

export type MapArrangement = {
  readonly key: string;
  /** "4 into 2 into 1" */
  readonly name: string;
  /** Bore of the collector's outlet, m; null: as the design has it. */
  readonly outlet: number | null;
  readonly cells: readonly MapCell[];
  readonly rules: readonly MapRule[];
};

/** Where a size is taken from, or what the user has. `outlet` as in `MapArrangement`. */
export type MapNow = MapSize & { readonly arrangement: string; readonly outlet: number | null };

export type MapProps = {
  readonly arrangements: readonly MapArrangement[];
  /** rpm */
  readonly band: readonly [lowest: number, highest: number];
  /** How far coarse cells put sizes apart, and how far few speeds do, N m of mean torque; null: not known yet. */
  readonly coarseError: number | null;
  readonly speedsError: number | null;
  /** What the user has now, drawn beside. */
  readonly now?: MapNow | null;
  readonly onChoose: (size: MapNow) => void;
};
