/**
 * Every number of the engine form by its path: unit, bounds, and what it means, for the page to show beside it and for
 * refusals. Bounds keep out slips of the hand (cm for mm, diameter for radius), not unusual engines. mm, degrees, rpm.
 */

export type NumberField = {
  readonly name: string;
  readonly unit: 'mm' | '°' | 'rpm' | '';
  readonly least: number;
  readonly most: number;
  readonly meaning: string;
  /** Whole numbers only. */
  readonly whole?: true;
};

const mm = (name: string, least: number, most: number, meaning: string): NumberField => ({
  name,
  unit: 'mm',
  least,
  most,
  meaning,
});

const tube = (which: string) =>
  ({
    [`${which}/tube/outsideDiameter`]: mm('Outside diameter', 15, 130, 'Across the tube, outside to outside'),
    [`${which}/tube/wall`]: mm('Wall', 0.5, 6, 'Thickness of the tube’s wall'),
    [`${which}/length`]: mm('Length', 50, 3000, 'Each runner’s length along its middle; left out: any, but equal'),
    [`${which}/tooling/centerlineRadius`]: mm(
      'Bend radius',
      15,
      600,
      'Of the die or stock bend, to the middle of the tube',
    ),
    [`${which}/tooling/firstStraight`]: mm('First straight', 0, 200, 'Least straight out of a port or merge'),
    [`${which}/tooling/betweenStraight`]: mm(
      'Straight between',
      0,
      400,
      'Least straight between two bends: what the clamp grips',
    ),
    [`${which}/tooling/lastStraight`]: mm('Last straight', 0, 200, 'Least straight into a merge'),
    [`${which}/tooling/maxBendAngle`]: {
      name: 'Largest bend',
      unit: '°',
      least: 45,
      most: 180,
      meaning: 'The most that one bend can turn',
    },
    [`${which}/tooling/maxBends`]: {
      name: 'Most bends',
      unit: '',
      least: 1,
      most: 8,
      whole: true,
      meaning: 'How many bends one runner may have',
    },
  }) satisfies Record<string, NumberField>;

const crankAngle = (name: string) => ({
  name,
  unit: '°' as const,
  least: -720,
  most: 720,
  meaning: 'Crank degrees from top dead centre of the exhaust stroke',
});

const valve = (which: string, name: string) =>
  ({
    [`${which}/count`]: {
      name: `${name} valves`,
      unit: '',
      least: 1,
      most: 4,
      whole: true,
      meaning: 'Valves a cylinder',
    },
    [`${which}/diameter`]: mm(`${name} valve`, 8, 120, 'Across the valve’s head'),
    [`${which}/lift`]: mm(`${name} lift`, 1, 40, 'At the valve, fully open'),
    [`${which}/opens`]: crankAngle(`${name} opens`),
    [`${which}/closes`]: crankAngle(`${name} closes`),
  }) satisfies Record<string, NumberField>;

/** By path; every entry of a list stands under a star. */
const FIELDS: Readonly<Record<string, NumberField>> = {
  cylinders: { name: 'Cylinders', unit: '', least: 1, most: 12, whole: true, meaning: 'How many the engine has' },
  bore: mm('Bore', 20, 250, 'Diameter of a cylinder'),
  stroke: mm('Stroke', 15, 300, 'How far a piston travels'),
  rod: mm('Rod', 30, 600, 'Connecting rod, from centre to centre'),
  compressionRatio: {
    name: 'Compression',
    unit: '',
    least: 4,
    most: 25,
    meaning: 'Volume at the bottom over volume at the top',
  },
  'rpm/*': {
    name: 'Speed',
    unit: 'rpm',
    least: 300,
    most: 25_000,
    meaning: 'Lowest and highest speed the engine is used at',
  },
  ...valve('intakeValve', 'Intake'),
  ...valve('exhaustValve', 'Exhaust'),
  'banks/*/pitch': mm(
    'Port pitch',
    -300,
    300,
    'From each port to the next along the crankshaft; below 0: the other way',
  ),
  'port/angle': {
    name: 'Port angle',
    unit: '°',
    least: -60,
    most: 80,
    meaning: 'How far the port points below level; below 0: above it',
  },
  'port/lengthInHead': mm('Length in the head', 0, 400, 'Valve seat to the flange’s outer face; counts in the length'),
  'port/opening/diameter': mm('Opening', 10, 120, 'Diameter of a round port'),
  'port/opening/width': mm('Opening width', 10, 150, 'Along the crankshaft'),
  'port/opening/height': mm('Opening height', 10, 150, 'Square to its width'),
  'port/opening/corner': mm('Corner', 0, 75, 'Radius of the opening’s corners'),
  'flange/thickness': mm('Flange', 2, 40, 'Thickness of the plate'),
  'flange/gasket': mm('Gasket', 0, 10, 'Thickness once tightened'),
  'flange/hole': mm('Stud hole', 4, 25, 'Clearance hole for a stud'),
  'flange/studLength': mm('Stud', 10, 150, 'How far a stud stands out of the head'),
  ...tube('primary'),
  ...tube('secondary'),
  tolerance: mm('Tolerance', 0, 50, 'How far from equal the shop accepts; the drawing itself is exact'),
  'collectors/*/outletDiameter': mm('Outlet', 20, 200, 'Outside diameter of the collector’s outlet'),
  'collectors/*/length': mm('Collector length', 20, 600, 'From its inlets to its outlet'),
  tubeToTube: mm('Gap between tubes', 0, 50, 'Least gap from tube to tube, outside to outside'),
};

/** What the number at a path means and its bounds, such as for `banks/0/pitch`; undefined where none stands there. */
export const formFields = (path: string): NumberField | undefined => FIELDS[path.replace(/\/\d+(?=\/|$)/g, '/*')];
