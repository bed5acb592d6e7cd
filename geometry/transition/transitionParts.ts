/** The ports' transitions as parts, in the port's own frame, and what should be said of ports with and without one. mm. */
import type { Header } from '../header/resolve';
import { loadVerb } from '../nurbs/verb';
import type { HeaderPart, Made, PartRemark } from '../parts/part';
import { DEFAULT_CHORD_ERROR } from '../solid/tube';
import { transitionPart } from './areaSchedule';
import { flowWarnings } from './flowWarnings';
import { transitionLimits } from './limits';
import { portFlow, transitionShape } from './portFlow';
import { transitionSurfaces, transitionVolume } from './surfaces';
import { transitionMesh } from './transitionMesh';
import { tubeStartWarnings } from './tubeStart';

export async function transitionParts(header: Header): Promise<Made> {
  const parts: HeaderPart[] = [];
  const notMade: PartRemark[] = [];
  const warnings: PartRemark[] = [];
  for (const { port, pose } of header.ports.values()) {
    const id = transitionPart(port.id);
    const flow = portFlow(header, port.id);
    if (!flow) {
      if (port.transition) notMade.push(withoutTube(port.id, id));
      continue;
    }
    warnings.push(...flowWarnings(flow, port.transition ? id : `port ${port.id}`));
    const shape = transitionShape(flow);
    if (!shape) continue;
    const limits = transitionLimits(flow, id);
    if (limits.length > 0) {
      notMade.push(...limits);
      continue;
    }
    warnings.push(...tubeStartWarnings(flow, id));
    const surfaces = transitionSurfaces(await loadVerb(), shape);
    const { mesh, edges } = transitionMesh(surfaces, shape, DEFAULT_CHORD_ERROR);
    parts.push({
      id,
      kind: 'transition',
      name: 'transition',
      of: { kind: 'port', id: port.id },
      mesh,
      pose,
      volume: transitionVolume(surfaces, shape),
      material: flow.runner.tube.material,
      edges,
    });
  }
  return { parts, notMade, warnings };
}

const withoutTube = (port: string, part: string): PartRemark => ({
  part,
  where: `ports/${port}/transition`,
  message: `Port ${port}: its transition has no tube to lead to. Let a runner start there, or take the transition away.`,
});
