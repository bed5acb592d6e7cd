/**
 * Everything about making the tubes of a header, both ways: each runner's pieces and bend tables, what is bought and how it is cut,
 * the bill of materials, mass and money. Asynchronous: the solver of the cutting plans is loaded when needed.
 */
import { cutObstacle, type Header, headerParts, type Made } from '../../../geometry';
import type { Tube } from '../../../shared/design/types';
import { stockPlan } from '../nest/stockPlan';
import { type Part, partsOf } from '../part';
import { bentTubes } from './bent/bentTubes';
import { DEFAULT_WAY, madeBent, madeWelded } from './chosen';
import { checkHeights } from './heights/checkHeights';
import { legChoices, triedOf } from './legChoices';
import { materialLines } from './materials/materials';
import { priceRemarks } from './materials/priceRemarks';
import { massOfParts } from './materials/weights';
import type { BentTube, Making, Remark, TubeGroup, WeldedTube } from './report';
import { bentPieces, collectorPieces, weldedPieces } from './stockPieces';
import { costOf } from './totals/costOf';
import { bentTotals } from './totals/wayTotals';
import { weldedTube } from './welded/weldedTube';

/** To compare ways by, for each search; what is made is planned as long as it takes. */
const SECONDS = 4;

/** @param made every part of the header, where who calls has them already */
export async function makingOf(header: Header, made?: Made): Promise<Making> {
  const { parts: solids } = made ?? (await headerParts(header));
  const { workshop, display = 'mm' } = header.design;
  const { parts } = partsOf(header);
  const welded = parts.map((part) => weldedTube(header, part));
  const bent = parts.flatMap((part) => bentTubes(header, part));
  const tubeOf = tubeFinder(parts);
  const groups: TubeGroup[] = [];
  for (const tube of new Set(parts.map(({ resolved }) => resolved.runner.tube)))
    groups.push(await groupOf(header, tube, parts, welded, bent, tubeOf));
  const ofPieces = madeWelded({ groups, welded });
  const inOne = madeBent({ groups, bent });
  const pieces = weldedPieces(ofPieces, tubeOf);
  const bars = [...pieces.bars, ...bentPieces(inOne, tubeOf).bars, ...collectorPieces(header, solids)];
  const plan = await stockPlan(workshop, bars, pieces.bends, { display });
  const materials = materialLines(header, solids);
  return {
    groups,
    welded,
    bent,
    heights: parts.map(checkHeights),
    plan,
    materials,
    mass: massOfParts(solids),
    cost: costOf(workshop, groups, plan, materials),
    remarks: once([
      ...notPlanned(header),
      ...[...ofPieces, ...inOne, plan].flatMap((t) => t.remarks),
      ...priceRemarks(workshop, materials),
    ]),
  };
}

async function groupOf(
  header: Header,
  tube: string,
  parts: readonly Part[],
  welded: readonly WeldedTube[],
  bent: readonly BentTube[],
  tubeOf: (runner: string) => Tube,
): Promise<TubeGroup> {
  const { workshop, tubes, tooling, display = 'mm' } = header.design;
  const own = <T extends { readonly tube: string }>(list: readonly T[]): T[] => list.filter((t) => t.tube === tube);
  const [ofPieces, inOne] = [own(welded), own(bent)];
  const pieces = weldedPieces(ofPieces, tubeOf);
  const asked = { tube: tubes[tube]!, workshop };
  const weldedPlan = await stockPlan(workshop, pieces.bars, pieces.bends, { display, seconds: SECONDS });
  const bentPlan = await stockPlan(workshop, bentPieces(inOne, tubeOf).bars, [], { display, seconds: SECONDS });
  const asSet = triedOf({ ...asked, plan: weldedPlan }, ofPieces);
  return {
    tube,
    legs: await legChoices(header, tube, parts, asSet),
    runners: ofPieces.map(({ runner }) => runner),
    chosen: tooling[tube]?.making ?? DEFAULT_WAY,
    welded: asSet.totals,
    bent: bentTotals({ ...asked, plan: bentPlan }, inOne),
  };
}

/** Runners that no plan has, and why. */
const notPlanned = (header: Header): Remark[] =>
  header.runners.flatMap((resolved): Remark[] => {
    const { id } = resolved.runner;
    const why = cutObstacle(header, resolved);
    return why ? [{ where: `runners/${id}`, message: `${id} is in no plan, because ${why}.`, stops: true }] : [];
  });

/** What is true of a die or the shelf is told by every tube. */
const once = (remarks: readonly Remark[]): Remark[] => [
  ...new Map(remarks.map((remark) => [`${remark.where} ${remark.message}`, remark])).values(),
];

function tubeFinder(parts: readonly Part[]): (runner: string) => Tube {
  const tubes = new Map(parts.map(({ id, resolved }) => [id, resolved.tube]));
  return (runner) => tubes.get(runner)!;
}
