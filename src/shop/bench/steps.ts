/**
 * What is found about making a header, as steps in the order of work: a runner is made by itself, its heights are checked, it is
 * welded and looked at; then the whole header is proved. Numbers are rounded to what the workshop's tape and dial read. Pure.
 */
import type { Header } from '../../../geometry';
import { chosenWay } from '../making/chosen';
import type { Making } from '../making/report';
import { bentSteps } from './bentSteps';
import { headerSteps } from './headerSteps';
import type { Step } from './step';
import { createUnits } from './units';
import { weldedSteps } from './weldedSteps';

export function benchSteps(making: Making, header: Header): Step[] {
  const units = createUnits(header);
  const runners = making.welded.flatMap((tube) =>
    chosenWay(making, tube.tube) === 'bent'
      ? bentSteps(making, header, tube.runner, units)
      : weldedSteps(making, header, tube, units),
  );
  return [...runners, ...headerSteps(header)];
}
