/**
 * Surroundings: nearly clear where they face the eye, a little denser where they turn away, so that they recede behind
 * the header and still have a shape. Never written to the depth buffer.
 */
import { Color, ShaderMaterial, type Side } from 'three';
import { sharedMaterials } from './sharedMaterials';

const VERTEX = /* glsl */ `
varying vec3 vNormal;
varying vec3 vView;
#include <clipping_planes_pars_vertex>
void main() {
  vec4 mvPosition = modelViewMatrix * vec4(position, 1.0);
  #include <clipping_planes_vertex>
  vec4 seen = mvPosition;
  vNormal = normalMatrix * normal;
  vView = projectionMatrix[3][3] == 1.0 ? vec3(0.0, 0.0, 1.0) : -seen.xyz;
  gl_Position = projectionMatrix * seen;
}`;

const FRAGMENT = /* glsl */ `
uniform vec3 colour;
uniform float face;
uniform float rim;
varying vec3 vNormal;
varying vec3 vView;
#include <clipping_planes_pars_fragment>
void main() {
  #include <clipping_planes_fragment>
  float facing = abs(dot(normalize(vNormal), normalize(vView)));
  float turned = 1.0 - facing;
  gl_FragColor = vec4(colour, mix(face, rim, turned * turned * turned));
  #include <colorspace_fragment>
}`;

/**
 * The same for all surroundings that look alike.
 * @param face opacity toward the eye @param rim opacity edge-on
 */
export const ghostMaterial = sharedMaterials(
  (colour: string, face: number, rim: number, side: Side): ShaderMaterial =>
    new ShaderMaterial({
      uniforms: { colour: { value: new Color(colour) }, face: { value: face }, rim: { value: rim } },
      vertexShader: VERTEX,
      fragmentShader: FRAGMENT,
      transparent: true,
      depthWrite: false,
      side,
      clipping: true,
    }),
);
