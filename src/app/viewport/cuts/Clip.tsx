/** Inside the canvas: clips all that is drawn by the cuts' planes. */
import { useThree } from '@react-three/fiber';
import { useEffect } from 'react';
import { Plane, Vector3 } from 'three';
import type { CutPlane } from './planes';

export function Clip({ planes }: { readonly planes: readonly CutPlane[] }) {
  const gl = useThree((s) => s.gl);
  const invalidate = useThree((s) => s.invalidate);
  useEffect(() => {
    gl.clippingPlanes = planes.map(({ axis, at, keep }) => {
      const normal = new Vector3().setComponent(axis, keep);
      return new Plane(normal, -keep * at);
    });
    invalidate();
  }, [gl, invalidate, planes]);
  return null;
}
