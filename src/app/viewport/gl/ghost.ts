/**
 * Surroundings: nearly clear where they face the eye, a little denser where they turn away, so that they recede behind
 * the header and still have a shape. Never written to the depth buffer.
 */
import { Color, ShaderMaterial, type ShaderMaterialParameters, type Side, Vector3 } from 'three';
import { sharedMaterials } from './sharedMaterials';

const VERTEX = /* glsl */ `
varying vec3 vNormal;
varying vec3 vView;
varying vec3 vAt;
varying vec3 vOwn;
#include <clipping_planes_pars_vertex>
void main() {
  vec4 mvPosition = modelViewMatrix * vec4(position, 1.0);
  #include <clipping_planes_vertex>
  vec4 seen = mvPosition;
  #ifdef FACETED
  vNormal = vec3(0.0);
  #else
  vNormal = normalMatrix * normal;
  #endif
  vAt = seen.xyz;
  vOwn = position;
  vView = projectionMatrix[3][3] == 1.0 ? vec3(0.0, 0.0, 1.0) : -seen.xyz;
  gl_Position = projectionMatrix * seen;
}`;

const FRAGMENT = /* glsl */ `
uniform vec3 colour;
uniform float face;
uniform float rim;
varying vec3 vNormal;
varying vec3 vView;
varying vec3 vAt;
varying vec3 vOwn;
#ifdef CROPPED
uniform vec3 low;
uniform vec3 high;
#endif
#include <clipping_planes_pars_fragment>
void main() {
  #include <clipping_planes_fragment>
  #ifdef CROPPED
  if (any(lessThan(vOwn, low)) || any(greaterThan(vOwn, high))) discard;
  #endif
  #ifdef FACETED
  // Millions of triangles bring no normals along: each is flat, and its slope on screen tells how it stands.
  vec3 across = cross(dFdx(vAt), dFdy(vAt));
  float facing = abs(dot(normalize(across), normalize(vView)));
  #else
  float facing = abs(dot(normalize(vNormal), normalize(vView)));
  #endif
  float turned = 1.0 - facing;
  gl_FragColor = vec4(colour, mix(face, rim, turned * turned * turned));
  #include <colorspace_fragment>
}`;

const made = (colour: string, face: number, rim: number, side: Side, how: Partial<ShaderMaterialParameters>) =>
  new ShaderMaterial({
    vertexShader: VERTEX,
    fragmentShader: FRAGMENT,
    transparent: true,
    depthWrite: false,
    side,
    clipping: true,
    ...how,
    uniforms: { colour: { value: new Color(colour) }, face: { value: face }, rim: { value: rim }, ...how.uniforms },
  });

/**
 * The same for all surroundings that look alike.
 * @param face opacity toward the eye @param rim opacity edge-on
 */
export const ghostMaterial = sharedMaterials(
  (colour: string, face: number, rim: number, side: Side): ShaderMaterial => made(colour, face, rim, side, {}),
);

/** For triangles without normals: each is flat. */
export const facetedGhost = sharedMaterials(
  (colour: string, face: number, rim: number, side: Side): ShaderMaterial =>
    made(colour, face, rim, side, { defines: { FACETED: '' } }),
);

type Corners = readonly [readonly [number, number, number], readonly [number, number, number]];

/** The same, only what is in a box drawn: its corners are in the mesh's own frame and unit. Owned by whoever made it. */
export const croppedGhost = (colour: string, face: number, rim: number, side: Side, [low, high]: Corners) =>
  made(colour, face, rim, side, {
    defines: { FACETED: '', CROPPED: '' },
    uniforms: { low: { value: new Vector3(...low) }, high: { value: new Vector3(...high) } },
  });
