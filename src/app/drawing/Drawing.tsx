/** Drawing in the picture, loaded when it begins. */
import { lazy, Suspense } from 'react';
import type { DrawLayerProps } from './DrawLayer';
import { useDrawing } from './state';

const DrawLayer = lazy(async () => ({ default: (await import('./DrawLayer')).DrawLayer }));
const DrawCard = lazy(async () => ({ default: (await import('./DrawCard')).DrawCard }));

export function Drawing(props: Omit<DrawLayerProps, 'shape'>) {
  const shape = useDrawing((s) => s.shape);
  if (!shape) return null;
  return (
    <Suspense>
      <DrawLayer shape={shape} {...props} />
    </Suspense>
  );
}

export function DrawingCard() {
  const shape = useDrawing((s) => s.shape);
  if (!shape) return null;
  return (
    <Suspense>
      <DrawCard shape={shape} />
    </Suspense>
  );
}
