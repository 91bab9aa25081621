/**
 * The room's skin: a thin wash that is denser where it is seen edge-on, as any film is. What lies in one of the clash
 * boxes is cut out in the fails colour, hatched as cut surfaces are, with an inked border. Beside the girder the wash
 * is thinner, so that the girder is seen.
 */
import { Color, DoubleSide, Matrix4, ShaderMaterial, Vector3 } from 'three'
import { MOST_BOXES } from './clash-boxes'

const vertex = /* glsl */ `
  varying vec3 vAt;
  varying vec3 vNormal;
  varying vec3 vView;
  void main() {
    vec4 world = modelMatrix * vec4(position, 1.0);
    vAt = world.xyz;
    vNormal = normalize(mat3(modelMatrix) * normal);
    vView = cameraPosition - world.xyz;
    gl_Position = projectionMatrix * viewMatrix * world;
  }
`

const fragment = /* glsl */ `
  uniform vec3 skin;
  uniform vec3 fails;
  uniform float density;
  uniform float pixels;
  uniform vec3 soffit;
  uniform int boxCount;
  uniform mat4 boxes[${MOST_BOXES}];
  varying vec3 vAt;
  varying vec3 vNormal;
  varying vec3 vView;

  void main() {
    float inside = -1.0;
    for (int i = 0; i < ${MOST_BOXES}; i++) {
      if (i >= boxCount) break;
      vec3 q = 0.5 - abs((boxes[i] * vec4(vAt, 1.0)).xyz);
      inside = max(inside, min(q.x, min(q.y, q.z)));
    }
    float edge = fwidth(inside);
    float facing = abs(dot(normalize(vNormal), normalize(vView)));
    if (inside > 0.0) {
      float hatch = step(0.78, fract((gl_FragCoord.x + gl_FragCoord.y) / (7.0 * pixels)));
      float border = 1.0 - step(2.0 * edge, inside);
      gl_FragColor = vec4(mix(fails, fails * 0.62, max(hatch, border)), 0.74);
    } else {
      float beside = vAt.z > soffit.z + dot(soffit.xy, vAt.xy) ? 0.35 : 1.0;
      gl_FragColor = vec4(skin, beside * density * mix(2.1, 1.0, smoothstep(0.0, 0.75, facing)));
    }
    #include <colorspace_fragment>
  }
`

/** In the place of a box that is not there. */
const none = new Matrix4()

export interface SkinStyle {
  skin: string
  fails: string
  /** Opacity seen square on. */
  density: number
  /** The underside of the girder as a plane, z = z0 + gx x + gy y: [gx, gy, z0]. */
  soffit: readonly [number, number, number]
  boxes: readonly Matrix4[]
}

export function skinMaterial(): ShaderMaterial {
  return new ShaderMaterial({
    vertexShader: vertex,
    fragmentShader: fragment,
    transparent: true,
    depthWrite: false,
    side: DoubleSide,
    // Layers of one colour look the same in any order.
    forceSinglePass: true,
    uniforms: {
      skin: { value: new Color() },
      fails: { value: new Color() },
      density: { value: 0.16 },
      pixels: { value: 1 },
      soffit: { value: new Vector3() },
      boxCount: { value: 0 },
      boxes: { value: Array.from({ length: MOST_BOXES }, () => new Matrix4()) },
    },
  })
}

export function styleSkin(
  material: ShaderMaterial,
  { skin, fails, density, soffit, boxes }: SkinStyle,
): void {
  const u = material.uniforms
  u.skin!.value.set(skin)
  u.fails!.value.set(fails)
  u.density!.value = density
  u.soffit!.value.set(...soffit)
  u.boxCount!.value = Math.min(boxes.length, MOST_BOXES)
  const held = u.boxes!.value as Matrix4[]
  held.forEach((matrix, i) => {
    matrix.copy(boxes[i] ?? none)
  })
}
