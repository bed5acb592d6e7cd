/**
 * Ink: the dark edge that a draughtsman gives a round tube. The outer wall is drawn once more from the inside, swollen by
 * a width in pixels, so that only a rim shows. The same rim, wider and in the accent, marks what is selected.
 */
import { BackSide, Color, ShaderMaterial, Vector2, type WebGLRenderer } from 'three';
import { sharedMaterials } from './sharedMaterials';

const VERTEX = /* glsl */ `
uniform float width;
uniform vec2 size;
#include <clipping_planes_pars_vertex>
void main() {
  vec4 mvPosition = modelViewMatrix * vec4(position, 1.0);
  #include <clipping_planes_vertex>
  vec4 clip = projectionMatrix * mvPosition;
  vec2 away = (normalMatrix * normal).xy;
  clip.xy += away * width * 2.0 / size * clip.w;
  gl_Position = clip;
}`;

const FRAGMENT = /* glsl */ `
uniform vec3 colour;
uniform float opacity;
#include <clipping_planes_pars_fragment>
void main() {
  #include <clipping_planes_fragment>
  gl_FragColor = vec4(colour, opacity);
  #include <colorspace_fragment>
}`;

/** @param width in CSS pixels */
export function inkMaterial(colour: string, width: number, opacity = 1): ShaderMaterial {
  return new ShaderMaterial({
    uniforms: {
      colour: { value: new Color(colour) },
      width: { value: width },
      opacity: { value: opacity },
      size: { value: new Vector2(1, 1) },
    },
    vertexShader: VERTEX,
    fragmentShader: FRAGMENT,
    side: BackSide,
    clipping: true,
    transparent: opacity < 1,
  });
}

/** The same for all edges of one colour and width. */
export const sharedInk = sharedMaterials((colour: string, width: number) => inkMaterial(colour, width));

/** To be called as the mesh's onBeforeRender: the rim's width is in pixels, so it must know how many there are. */
export function measureInk(renderer: WebGLRenderer, material: ShaderMaterial): void {
  renderer.getSize(material.uniforms.size!.value as Vector2);
}
