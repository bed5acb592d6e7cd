/** The ground: hairlines every 100 mm, every fifth a little stronger, fading with distance from the header. mm. */
import { Color, DoubleSide, ShaderMaterial, Vector2 } from 'three';

export const GRID_SPACING = 100;

const VERTEX = /* glsl */ `
varying vec2 ground;
void main() {
  vec4 placed = modelMatrix * vec4(position, 1.0);
  ground = placed.xy;
  gl_Position = projectionMatrix * viewMatrix * placed;
}`;

// A line is as wide as a pixel on the ground; where lines crowd closer than pixels they melt into nothing, not into moiré.
const FRAGMENT = /* glsl */ `
uniform vec3 colour;
uniform float strength;
uniform vec2 middle;
uniform float reach;
varying vec2 ground;
float lines(float spacing) {
  vec2 at = ground / spacing;
  vec2 pixel = vec2(length(vec2(dFdx(at.x), dFdy(at.x))), length(vec2(dFdx(at.y), dFdy(at.y))));
  vec2 off = abs(fract(at - 0.5) - 0.5);
  vec2 line = (1.0 - smoothstep(pixel * 0.1, pixel * 1.1, off)) * (1.0 - smoothstep(0.12, 0.5, pixel));
  return max(line.x, line.y);
}
void main() {
  float fade = 1.0 - smoothstep(0.25, 1.0, distance(ground, middle) / reach);
  float on = max(lines(${GRID_SPACING}.0) * 0.5, lines(${GRID_SPACING * 5}.0));
  gl_FragColor = vec4(colour, on * fade * strength);
  #include <colorspace_fragment>
}`;

export function gridMaterial(colour: string, strength: number): ShaderMaterial {
  return new ShaderMaterial({
    uniforms: {
      colour: { value: new Color(colour) },
      strength: { value: strength },
      middle: { value: new Vector2() },
      reach: { value: 1000 },
    },
    vertexShader: VERTEX,
    fragmentShader: FRAGMENT,
    transparent: true,
    depthWrite: false,
    side: DoubleSide,
  });
}
