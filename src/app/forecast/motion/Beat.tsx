/** Moves the play on with the viewport's pictures, and asks for the next one only while it plays or has been moved. */
import { useFrame, useThree } from '@react-three/fiber';
import { useEffect } from 'react';
import { moveOn, useMotion } from './state';

export function Beat() {
  const invalidate = useThree((s) => s.invalidate);
  useEffect(() => {
    invalidate();
    return useMotion.subscribe(() => invalidate());
  }, [invalidate]);
  // Before the tubes are coloured.
  useFrame((_, seconds) => moveOn(seconds), -2);
  return null;
}
