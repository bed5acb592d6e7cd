/** Making the header, as actions. */
import type { Action } from '../actions/list/action';
import { needsDesign } from '../actions/list/workActions';
import { useLeaf } from '../leaf';
import { openBench } from '../workbench/state';

export const makingActions: readonly Action[] = [
  {
    id: 'make.open',
    name: 'Show how the header is made',
    group: 'View',
    also: 'welded bent pieces bends stock buy cost workshop mass materials',
    ...needsDesign,
    run: () => useLeaf.getState().ask('make'),
  },
  {
    id: 'make.bench',
    name: 'Go to the workbench',
    group: 'View',
    also: 'steps saw weld tick phone',
    ...needsDesign,
    run: openBench,
  },
];
