/** Draws atlas cells upright at whole pixels, always the same size, wherever their points are seen. */
import { Color, ShaderMaterial, type Texture, Vector2 } from 'three'
import { CELL, COLUMNS } from './number-atlas'

const vertex = /* glsl */ `
  attribute vec3 at;
  attribute vec2 cell;
  uniform vec2 screen;
  uniform float lift;
  uniform float farthest;
  varying vec2 vUv;
  uniform float rows;
  void main() {
    vec4 p = projectionMatrix * viewMatrix * vec4(at, 1.0);
    vec2 pixel = floor((p.xy / p.w * 0.5 + 0.5) * screen) + 0.5;
    vec2 corner = position.xy * vec2(${CELL.width}.0, ${CELL.height}.0) + vec2(0.0, lift);
    p.xy = ((pixel + corner) / screen * 2.0 - 1.0) * p.w;
    p.z -= 0.0004 * p.w;
    if (p.w > farthest) p = vec4(2.0, 2.0, 2.0, 1.0);
    gl_Position = p;
    vUv = (cell + vec2(position.x + 0.5, 0.5 - position.y)) / vec2(${COLUMNS}.0, rows);
  }
`

const fragment = /* glsl */ `
  uniform sampler2D numbers;
  uniform vec3 ink;
  varying vec2 vUv;
  void main() {
    float a = texture2D(numbers, vUv).a;
    if (a < 0.04) discard;
    gl_FragColor = vec4(ink, a);
    #include <colorspace_fragment>
  }
`

export const numberMaterial = (numbers: Texture, rows: number): ShaderMaterial =>
  new ShaderMaterial({
    vertexShader: vertex,
    fragmentShader: fragment,
    transparent: true,
    depthWrite: false,
    uniforms: {
      numbers: { value: numbers },
      rows: { value: rows },
      ink: { value: new Color() },
      screen: { value: new Vector2(1, 1) },
      /** Pixels above the point. */
      lift: { value: 8 },
      /** Farther off than this numbers would run into one another, m. */
      farthest: { value: 60 },
    },
  })
