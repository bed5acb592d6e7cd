/** What is left once every runner is made: together, welded to flanges and collectors, proved, tightened again. Common practice. */
import type { Header } from '../../../geometry';
import { named } from './bench';
import type { Step } from './step';

const step = (id: string, task: Step['task'], title: string, says: readonly string[]): Step => ({
  id: `header/${id}`,
  runner: null,
  task,
  title,
  figures: [],
  beside: [],
  says,
  care: [],
  drawing: null,
});

export function headerSteps({ design }: Header): Step[] {
  const flanges = (design.flanges ?? []).map(({ id }) => id);
  const collectors = design.merges.map(({ id }) => id);
  const to = [...flanges.map((id) => named('flange', id)), ...collectors.map((id) => named('collector', id))];
  return [
    step('fit', 'fit', 'Put the whole header together', [
      'On the engine, or on a plate with the same holes: every tube in its place, tacked, nothing forced.',
      'See that tools still reach every fastener and that it comes off again, before anything is welded for good.',
    ]),
    ...(to.length > 0
      ? [
          step('weld', 'weld', 'Weld tubes to flanges and collectors', [
            `${to.join(', ')}. Bolt flanges to something thick and flat while they are welded, and until they are cold.`,
          ]),
        ]
      : []),
    step('leak', 'prove', 'Prove that it is tight', [
      'Close every opening, put it under a little air pressure, brush soapy water over every weld: no bubbles.',
    ]),
    ...(flanges.length > 0
      ? [step('tighten', 'prove', 'Tighten again after the first heat', ['Once it has been hot and is cold again.'])]
      : []),
  ];
}
