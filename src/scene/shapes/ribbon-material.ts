/**
 * What draws ribbons: as wide in pixels as they are to be, whatever the distance. The wide lines that come with three.js
 * draw each segment as an instance of its own with a dearer shader; without a graphics processor that took twelve times as
 * long as this (13 ms against 1.1 for the lines of one dragged line), about a third of the frame under the hand.
 */
import { Color, DoubleSide, ShaderMaterial, Vector2 } from 'three'

const vertex = /* glsl */ `
  attribute vec3 other;
  attribute vec2 along;
  attribute float side;
  uniform vec2 size;
  uniform float width;
  varying float vAlong;

  void main() {
    vec4 here = modelViewMatrix * vec4(position, 1.0);
    vec4 there = modelViewMatrix * vec4(other, 1.0);
    // An end behind the eye has no place in the picture: it is taken back along its segment to where the picture begins.
    float begins = -projectionMatrix[3][2] / (projectionMatrix[2][2] - 1.0);
    float back = 0.0;
    if (here.z > begins && there.z < begins) {
      back = (here.z - begins) / (here.z - there.z);
      here = mix(here, there, back);
    } else if (there.z > begins && here.z < begins) {
      there = mix(there, here, (there.z - begins) / (there.z - here.z));
    }
    vAlong = mix(along.x, along.y, back);
    vec4 from = projectionMatrix * here;
    vec4 to = projectionMatrix * there;
    vec2 way = (to.xy / to.w - from.xy / from.w) * size;
    vec2 unit = dot(way, way) > 1e-9 ? normalize(way) : vec2(1.0, 0.0);
    // Half a width beyond the end too, so that bends have no notches.
    from.xy += (vec2(-unit.y, unit.x) * side - unit) * width / size * from.w;
    gl_Position = from;
  }
`

const fragment = /* glsl */ `
  uniform vec3 color;
  uniform float opacity;
  #ifdef DASHED
    uniform float dash;
    varying float vAlong;
  #endif

  void main() {
    #ifdef DASHED
      if (mod(vAlong, 2.0 * dash) > dash) discard;
    #endif
    gl_FragColor = vec4(color, opacity);
  }
`

export interface RibbonStyle {
  color: string
  /** Pixels. */
  width: number
  opacity: number
  /** Length of dash and gap, m; 0: drawn through. */
  dash: number
  /** Shows through whatever stands before it. */
  through: boolean
}

export function ribbonMaterial(): ShaderMaterial {
  return new ShaderMaterial({
    vertexShader: vertex,
    fragmentShader: fragment,
    side: DoubleSide,
    forceSinglePass: true,
    uniforms: {
      size: { value: new Vector2(1, 1) },
      width: { value: 1 },
      color: { value: new Color() },
      opacity: { value: 1 },
      dash: { value: 1 },
    },
  })
}

export function styleRibbon(material: ShaderMaterial, style: RibbonStyle): void {
  const u = material.uniforms
  // The picture holds colours as screens show them; turning them there once spares it for every pixel.
  u.color!.value.set(style.color).convertLinearToSRGB()
  u.width!.value = style.width
  u.opacity!.value = style.opacity
  u.dash!.value = style.dash || 1
  material.transparent = style.opacity < 1 || style.through
  material.depthWrite = style.opacity === 1
  material.depthTest = !style.through
  const dashed = style.dash > 0
  if (dashed !== 'DASHED' in material.defines) {
    material.defines = dashed ? { DASHED: '' } : {}
    material.needsUpdate = true
  }
}
