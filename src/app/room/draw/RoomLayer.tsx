/**
 * What the Room leaf draws into the picture: sensors, service points, the wrap, the tool at the place looked at, the axis that
 * the engine rolls about, a piece on its way off. Loaded when there is some of it.
 */
import type { Header } from '../../../../geometry';
import type { Paint } from '../../colours';
import { useLeaf } from '../../leaf';
import type { Owned, OwnerKey } from '../../made/owned';
import type { Palette } from '../../viewport/palette';
import { Moved } from '../../viewport/parts/Moved';
import { useHiding } from '../../viewport/seen';
import { isHidden } from '../../viewState';
import { useLifted } from '../lifted';
import { useRoomLook } from '../look';
import { useStance } from '../posed';
import { MovingPiece } from './MovingPiece';
import { RollAxis } from './RollAxis';
import { SensorBodies } from './SensorBodies';
import { ServiceMarks } from './ServiceMarks';
import { Sleeves } from './Sleeve';
import { ToolShown } from './ToolShown';

export type RoomLayerProps = {
  readonly header: Header;
  readonly paints: ReadonlyMap<string, Paint>;
  readonly palette: Palette;
  readonly made: ReadonlyMap<OwnerKey, Owned>;
};

export function RoomLayer({ header, paints, palette, made }: RoomLayerProps) {
  const onTop = useLeaf((s) => s.leaf === 'room');
  const { wrapDrawn, tinted } = useRoomLook();
  const motionOpen = useRoomLook((s) => s.open.has('motion'));
  const hiding = useHiding();
  const lifted = useLifted();
  const stance = useStance(header.design);
  const { motion, wrap } = header.design;
  const stands = (key: string) => !isHidden(hiding, key) && !lifted?.keys.has(key);
  /** What is screwed into a piece or wound round it goes along. */
  const goes = (key: string) => !isHidden(hiding, key) && (lifted?.keys.has(key) ?? false);
  const isWrapped = wrap !== undefined && wrapDrawn && !tinted;
  return (
    <>
      <Moved by={stance.turn}>
        <SensorBodies header={header} palette={palette} stands={stands} />
        <ServiceMarks points={header.design.service} palette={palette} />
        {isWrapped && <Sleeves header={header} paints={paints} palette={palette} stands={stands} />}
      </Moved>
      {onTop && motionOpen && motion?.rock && <RollAxis rock={motion.rock} header={header} palette={palette} />}
      {onTop && <ToolShown isWrapped={wrap !== undefined} palette={palette} />}
      {lifted && (
        <MovingPiece lifted={lifted} header={header} paints={paints} palette={palette} made={made}>
          <SensorBodies header={header} palette={palette} stands={goes} />
          {isWrapped && <Sleeves header={header} paints={paints} palette={palette} stands={goes} />}
        </MovingPiece>
      )}
    </>
  );
}
