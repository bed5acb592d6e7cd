/** What the Room leaf draws into the picture, loaded when there is some of it. */
import { lazy, Suspense } from 'react';
import { useLeaf } from '../leaf';
import type { RoomLayerProps } from './draw/RoomLayer';
import { useRoomLook } from './look';

const RoomLayer = lazy(async () => ({ default: (await import('./draw/RoomLayer')).RoomLayer }));

export function RoomDrawn(props: RoomLayerProps) {
  const onTop = useLeaf((s) => s.leaf === 'room');
  const wrapDrawn = useRoomLook((s) => s.wrapDrawn);
  const { sensors = [], service = [], wrap } = props.header.design;
  if (!onTop && sensors.length === 0 && service.length === 0 && !(wrap && wrapDrawn)) return null;
  return (
    <Suspense>
      <RoomLayer {...props} />
    </Suspense>
  );
}
