/**
 * What stands around a header, by kind, with the clearance proposed for each. mm to the bare tube, without shields. Common
 * practice, not from a published source: what burns, melts or moves wants more room; a shield or wrap may allow less.
 */
export type SurroundingKind = {
  readonly kind: string;
  readonly label: string;
  /** Proposed, mm. */
  readonly clearance: number;
  readonly source: null;
};

const kind = (kind: string, label: string, clearance: number): SurroundingKind => ({
  kind,
  label,
  clearance,
  source: null,
});

export const SURROUNDING_KINDS: readonly SurroundingKind[] = [
  kind('structure', 'Structure: body, frame, engine', 10),
  kind('steering', 'Steering: shaft, joints, rack', 20),
  kind('brake-line', 'Brake line', 40),
  kind('wiring', 'Wiring', 50),
  kind('fuel-line', 'Fuel line', 75),
  kind('hose', 'Hose', 50),
  kind('plastic', 'Plastic', 50),
  kind('ground', 'Ground', 100),
];

/** Undefined for a kind of the user's own. */
export const surroundingKind = (name: string): SurroundingKind | undefined =>
  SURROUNDING_KINDS.find((k) => k.kind === name.trim().toLowerCase().replaceAll(' ', '-'));
