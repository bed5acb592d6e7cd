/**
 * The cut faces of a closed solid. Whoever looks through a cut sees the solid's walls from within: painted flat and hatched,
 * as a section on a drawing is, they read as the face of the cut. No second geometry, no stencil.
 */
import { BackSide, type BufferGeometry, Color, ShaderMaterial } from 'three';
import { useViewState } from '../../viewState';
import { useOwned } from '../gl/owned';
import type { Palette } from '../palette';

const VERTEX = /* glsl */ `
#include <clipping_planes_pars_vertex>
void main() {
  vec4 mvPosition = modelViewMatrix * vec4(position, 1.0);
  #include <clipping_planes_vertex>
  gl_Position = projectionMatrix * mvPosition;
}`;

const FRAGMENT = /* glsl */ `
uniform vec3 colour;
uniform vec3 line;
#include <clipping_planes_pars_fragment>
void main() {
  #include <clipping_planes_fragment>
  float across = mod(gl_FragCoord.x + gl_FragCoord.y, 7.0);
  gl_FragColor = vec4(mix(line, colour, smoothstep(0.6, 1.6, min(across, 7.0 - across))), 1.0);
  #include <colorspace_fragment>
}`;

export const useIsCut = (): boolean => useViewState(({ cuts }) => cuts.x.on || cuts.y.on || cuts.z.on);

type Props = { readonly geometry: BufferGeometry; readonly colour: string; readonly palette: Palette };

export function CutFace(props: Props) {
  return useIsCut() ? <Face {...props} /> : null;
}

function Face({ geometry, colour, palette }: Props) {
  const material = useOwned(
    () =>
      new ShaderMaterial({
        uniforms: { colour: { value: new Color(colour) }, line: { value: new Color(palette.ink) } },
        vertexShader: VERTEX,
        fragmentShader: FRAGMENT,
        side: BackSide,
        clipping: true,
        // A hair before the ink, which is drawn from the same walls' backs; by no more, or it would come through the bore.
        polygonOffset: true,
        polygonOffsetFactor: 0,
        polygonOffsetUnits: -8,
      }),
    [colour, palette],
  );
  return <mesh geometry={geometry} material={material} />;
}
