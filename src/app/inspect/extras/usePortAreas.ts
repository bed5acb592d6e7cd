/** The area schedule of one port, worked out in a worker once the design has rested; the last one stays up meanwhile. */
import { useEffect, useState } from 'react';
import type { AreaSchedule } from '../../../../geometry';
import type { Design } from '../../../../shared/design/types';
import { Cancelled, startTask } from '../../workers/task';

/** How long a design must stay as it is, ms: a drag changes it every frame. */
const REST = 150;

export type PortAreasState = {
  readonly schedule: AreaSchedule | null;
  readonly error: string | null;
  /** What is shown is of an earlier design, or nothing is known yet. */
  readonly waiting: boolean;
};

export function usePortAreas(design: Design, port: string): PortAreasState {
  const [state, setState] = useState<PortAreasState>({ schedule: null, error: null, waiting: true });
  // A port's areas follow from these alone.
  const { ports, flanges, tubes, tooling, runners } = design;
  // biome-ignore lint/correctness/useExhaustiveDependencies: the rest of the design does not matter here
  useEffect(() => {
    let cancel = () => {};
    setState((before) => ({ ...before, waiting: true }));
    const timer = setTimeout(() => {
      const task = startTask({ job: 'areas', design, port, meshes: null });
      cancel = task.cancel;
      task.result.then(
        (schedule) => setState({ schedule, error: null, waiting: false }),
        (error) => {
          if (error instanceof Cancelled) return;
          setState({ schedule: null, error: error instanceof Error ? error.message : String(error), waiting: false });
        },
      );
    }, REST);
    return () => {
      clearTimeout(timer);
      cancel();
    };
  }, [ports, flanges, tubes, tooling, runners, port]);
  return state;
}
