/** Looks into the room round the header while something shows it; loaded when it is first needed. */
import { lazy, Suspense } from 'react';
import { useDocument } from '../document';
import { useLeaf } from '../leaf';
import { useRoomLook } from './look';

const Watch = lazy(async () => ({ default: (await import('./Watch')).Watch }));

export function RoomWatch() {
  const onTop = useLeaf((s) => s.leaf === 'room');
  const tinted = useRoomLook((s) => s.tinted);
  const hasSensors = useDocument((s) => (s.settled?.sensors?.length ?? 0) > 0);
  if (!onTop && !tinted && !hasSensors) return null;
  return (
    <Suspense>
      <Watch />
    </Suspense>
  );
}
