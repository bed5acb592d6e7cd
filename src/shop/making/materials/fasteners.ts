/**
 * Studs, bolts, nuts, gaskets and sensors' bungs of the bill of materials. Masses are worked out from nominal sizes with threads
 * taken as solid, steel; sizes of bungs from memory. mm, kg.
 */
import { isStud } from '../../../../geometry';
import type { Design, Fastener } from '../../../../shared/design/types';
import { hexSize } from '../../../../shared/stock/hexFasteners';
import { materialOf } from '../../../../shared/stock/materials';
import { SENSOR_SIZES } from '../../../../shared/stock/sensors';
import { tubeMass } from '../../../../shared/stock/tubes';

/** One thing of the bill before it is counted with its like. */
export type Single = { readonly name: string; readonly what: string; readonly mass: number | null };

const STEEL = materialOf('mild-steel')!.density;
const KG_PER_MM3 = STEEL * 1e-9;

export const fasteners = ({ flanges = [], sensors = [] }: Design): Single[] => [
  ...flanges.flatMap(({ fasteners = [] }) => fasteners.flatMap(oneFastener)),
  ...flanges.flatMap(({ id, gasket = 0, ports, plates = 'one' }) => {
    const one = {
      name: `gasket ${id}`,
      what: `of flange ${id}, ${plates === 'one' ? 'one piece' : 'one a port'}`,
      mass: null,
    };
    return gasket > 0 ? Array.from({ length: plates === 'one' ? 1 : ports.length }, () => one) : [];
  }),
  ...sensors.map(({ kind }): Single => {
    const { thread, bung } = SENSOR_SIZES[kind];
    const bore = Number.parseFloat(thread.slice(1));
    const ring = { outsideDiameter: bung.diameter, wall: (bung.diameter - bore) / 2 };
    return { name: `bung ${thread}`, what: `for a sensor: ${kind}`, mass: tubeMass(ring, bung.height, STEEL) };
  }),
];

function oneFastener(fastener: Fastener): Single[] {
  const { thread, hole, length } = fastener;
  const size = hexSize(thread, hole);
  const shank = length === undefined ? null : (Math.PI / 4) * size.diameter ** 2 * length;
  const hexagon = (Math.sqrt(3) / 2) * size.acrossFlats ** 2;
  const long = length === undefined ? '' : ` x ${length}`;
  if (!isStud(fastener)) {
    const mass = shank === null ? null : (shank + hexagon * size.headHeight) * KG_PER_MM3;
    return [{ name: `bolt ${thread}${long}`, what: 'length under its head', mass }];
  }
  const nut = (hexagon - (Math.PI / 4) * size.diameter ** 2) * size.nutHeight;
  return [
    // What is screwed into the head is not counted: the design does not say how much that is.
    { name: `stud ${thread}${long}`, what: 'length out of the head', mass: shank === null ? null : shank * KG_PER_MM3 },
    { name: `nut ${thread}`, what: 'of a stud', mass: nut * KG_PER_MM3 },
  ];
}
