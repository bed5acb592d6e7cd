/** Why no gas can be followed through a design's header as it is: where, and the remedy. mm. */
import type { Header } from '../../../geometry/header/resolve';
import { pathOf } from '../../../shared/design/ids';
import type { Refusal } from '../../../shared/design/refusal';
import { LEAST } from './plainProblems';

export function laidOutProblems(header: Header): Refusal[] {
  const { design } = header;
  if (design.runners.length === 0) {
    const allowed = 'runners from ports to collectors; or, before there are any, lengths and bores in exhaust/sketch';
    return [{ path: 'runners', found: 'none', allowed }];
  }
  return [...runnerProblems(header), ...portProblems(header), ...mergeProblems(header)];
}

function runnerProblems({ design, runners }: Header): Refusal[] {
  return runners.flatMap(({ runner, tube, centerline }, i): Refusal[] => {
    const at = (...rest: string[]): string => pathOf(design, ['runners', i, ...rest]);
    if (!centerline)
      return [
        {
          path: at('points'),
          found: 'nothing',
          allowed: 'points: lay the runner out; or give lengths and bores in exhaust/sketch until then',
        },
      ];
    if (centerline.length < LEAST)
      return [
        {
          path: at('points'),
          found: `${centerline.length.toFixed(2)} mm of centerline`,
          allowed: `at least ${LEAST} mm, or no runner`,
        },
      ];
    const inside = tube.outsideDiameter - 2 * tube.wall;
    if (!(inside > 0))
      return [{ path: `tubes/${runner.tube}/wall`, found: String(tube.wall), allowed: 'a wall that leaves a bore' }];
    return [];
  });
}

/** Of the ports: each must lead somewhere, or its cylinder would breathe into nothing. */
const portProblems = ({ design, runners }: Header): Refusal[] =>
  design.ports.flatMap((port, i): Refusal[] => {
    if (runners.some(({ runner: { from } }) => 'port' in from && from.port === port.id)) return [];
    const allowed = 'a runner from it, or no such port';
    return [{ path: pathOf(design, ['ports', i]), found: 'no runner that starts there', allowed }];
  });

function mergeProblems({ design, runners, merges }: Header): Refusal[] {
  return design.merges.flatMap((merge, i): Refusal[] => {
    const at = (...rest: string[]): string => pathOf(design, ['merges', i, ...rest]);
    const isEntered = runners.some(({ runner }) => runner.to.merge === merge.id);
    const isLeft = runners.some(({ runner: { from } }) => 'merge' in from && from.merge === merge.id);
    if (!isEntered)
      return isLeft
        ? [{ path: at(), found: 'no runner that enters it', allowed: 'a runner to each of its inlets' }]
        : [];
    const { wall } = merges.get(merge.id)!;
    if (merge.length < LEAST)
      return [{ path: at('length'), found: `${merge.length} mm`, allowed: `at least ${LEAST} mm` }];
    if (!(merge.outletDiameter > 2 * wall))
      return [{ path: at('outletDiameter'), found: `${merge.outletDiameter} mm`, allowed: `more than ${2 * wall} mm` }];
    return [];
  });
}
