/**
 * What a kind of thing has beyond plain fields: a port's areas, a flange's edge and fasteners, a runner's points, a group's
 * measured lengths.
 */
import type { Header } from '../../../../geometry';
import type { Thing } from '../../../../shared/design/edit';
import type { Design } from '../../../../shared/design/types';
import { RunnerReach } from '../../windows/RunnerReach';
import { FastenerTable } from './FastenerTable';
import { FlangeOutline } from './FlangeOutline';
import { GroupMeasured } from './GroupMeasured';
import { PointTable } from './PointTable';
import { PortAreas } from './PortAreas';
import { WithoutTooling } from './WithoutTooling';

type Props = { readonly design: Design; readonly header: Header; readonly thing: Thing };

export function ThingExtras({ design, header, thing }: Props) {
  switch (thing.kind) {
    case 'port':
      return <PortAreas design={design} port={thing.id} />;
    case 'flange':
      return (
        <>
          <FlangeOutline design={design} flange={thing.id} />
          <FastenerTable design={design} flange={thing.id} />
        </>
      );
    case 'runner':
      return (
        <>
          <RunnerReach design={design} id={thing.id} />
          <PointTable design={design} header={header} id={thing.id} />
        </>
      );
    case 'group':
      return <GroupMeasured design={design} group={thing.id} />;
    case 'tube':
      return <WithoutTooling design={design} tube={thing.id} />;
    default:
      return null;
  }
}
