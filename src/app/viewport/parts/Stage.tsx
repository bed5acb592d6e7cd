/** Light without shadows: a studio to mirror, a sky, and one lamp that stays over the viewer's shoulder. */
import { useFrame, useThree } from '@react-three/fiber';
import { useEffect, useRef } from 'react';
import type { DirectionalLight } from 'three';
import { studioMap } from '../gl/studio';
import type { Palette } from '../palette';

export function Stage({ palette }: { readonly palette: Palette }) {
  const gl = useThree((s) => s.gl);
  const scene = useThree((s) => s.scene);
  const invalidate = useThree((s) => s.invalidate);
  const lamp = useRef<DirectionalLight>(null);

  useEffect(() => {
    const studio = studioMap(gl);
    scene.environment = studio.map;
    invalidate();
    return () => {
      scene.environment = null;
      studio.free();
    };
  }, [gl, scene, invalidate]);
  useEffect(() => {
    scene.environmentIntensity = palette.gleam;
  }, [scene, palette]);

  useFrame(({ camera }) => {
    const light = lamp.current;
    if (!light) return;
    light.position.set(-0.5, 0.8, 1).applyQuaternion(camera.quaternion);
    light.target.position.set(0, 0, 0);
  });
  return (
    <>
      <hemisphereLight position={[0, 0, 1]} intensity={0.35} groundColor="#b8b0a4" />
      <directionalLight ref={lamp} intensity={0.7} />
    </>
  );
}
