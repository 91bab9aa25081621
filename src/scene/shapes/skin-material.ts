/**
 * The room's skin: a thin wash that is denser where it is seen edge-on, as any film is. What lies in one of the clash
 * boxes is cut out in the fails colour, hatched as cut surfaces are, with an inked border. Beside the girder the wash
 * is thinner, so that the girder is seen.
 *
 * Without a graphics processor this is the dearest part of a frame under the hand, so a pixel does as little as it can: how
 * dense the film is, and where the pixel lies in the first boxes, comes evenly from its triangle's corners (8 ms a frame
 * against 25), and colours come as screens show them.
 */
import { Color, DoubleSide, Matrix4, ShaderMaterial, Vector3 } from 'three'
import { MOST_BOXES } from './clash-boxes'

/** Boxes that corners look at; those beyond are looked at for every pixel, for what corners hand on is finite too. */
const BY_CORNER = [0, 1, 2, 4, 8] as const
const MOST_BY_CORNER = 8

const vertex = /* glsl */ `
  uniform vec3 soffit;
  uniform mat4 boxes[${MOST_BOXES}];
  varying float vFilm;
  varying float vAbove;
  #if BY_CORNER > 0
    varying vec3 vBox[BY_CORNER];
  #endif
  #ifdef MORE
    varying vec3 vAt;
  #endif

  void main() {
    vec4 world = modelMatrix * vec4(position, 1.0);
    float facing = abs(dot(normalize(mat3(modelMatrix) * normal), normalize(cameraPosition - world.xyz)));
    vFilm = mix(2.1, 1.0, smoothstep(0.0, 0.75, facing));
    vAbove = world.z - soffit.z - dot(soffit.xy, world.xy);
    #if BY_CORNER > 0
      for (int i = 0; i < BY_CORNER; i++) vBox[i] = (boxes[i] * world).xyz;
    #endif
    #ifdef MORE
      vAt = world.xyz;
    #endif
    gl_Position = projectionMatrix * viewMatrix * world;
  }
`

const fragment = /* glsl */ `
  uniform vec3 skin;
  uniform vec3 fails;
  uniform float density;
  uniform float pixels;
  varying float vFilm;
  varying float vAbove;

  #if BY_CORNER > 0
    varying vec3 vBox[BY_CORNER];
    #ifdef MORE
      uniform mat4 boxes[${MOST_BOXES}];
      varying vec3 vAt;
    #endif

    /** Above 0 inside a unit cube. */
    float insideCube(vec3 at) {
      vec3 q = 0.5 - abs(at);
      return min(q.x, min(q.y, q.z));
    }

    float insideBoxes() {
      float inside = insideCube(vBox[0]);
      for (int i = 1; i < BY_CORNER; i++) inside = max(inside, insideCube(vBox[i]));
      #ifdef MORE
        for (int i = BY_CORNER; i < ${MOST_BOXES}; i++) {
          inside = max(inside, insideCube((boxes[i] * vec4(vAt, 1.0)).xyz));
        }
      #endif
      return inside;
    }
  #endif

  void main() {
    #if BY_CORNER > 0
      float inside = insideBoxes();
      float edge = fwidth(inside);
      if (inside > 0.0) {
        float hatch = step(0.78, fract((gl_FragCoord.x + gl_FragCoord.y) / (7.0 * pixels)));
        float border = 1.0 - step(2.0 * edge, inside);
        gl_FragColor = vec4(mix(fails, fails * 0.6, max(hatch, border)), 0.74);
        return;
      }
    #endif
    float beside = vAbove > 0.0 ? 0.35 : 1.0;
    gl_FragColor = vec4(skin, beside * density * vFilm);
  }
`

/** In the place of a box that is not there; everything is outside it. */
const none = new Matrix4().makeScale(0, 0, 0).setPosition(2, 2, 2)

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
    defines: { BY_CORNER: 0 },
    uniforms: {
      skin: { value: new Color() },
      fails: { value: new Color() },
      density: { value: 0.16 },
      pixels: { value: 1 },
      soffit: { value: new Vector3() },
      boxes: { value: Array.from({ length: MOST_BOXES }, () => new Matrix4()) },
    },
  })
}

export function styleSkin(
  material: ShaderMaterial,
  { skin, fails, density, soffit, boxes }: SkinStyle,
): void {
  const u = material.uniforms
  u.skin!.value.set(skin).convertLinearToSRGB()
  u.fails!.value.set(fails).convertLinearToSRGB()
  u.density!.value = density
  u.soffit!.value.set(...soffit)
  const held = u.boxes!.value as Matrix4[]
  held.forEach((matrix, i) => {
    matrix.copy(boxes[i] ?? none)
  })
  makeRoom(material, boxes.length)
}

/** Another shader, where one for as many boxes as this is not what there is. */
function makeRoom(material: ShaderMaterial, boxes: number): void {
  const byCorner = BY_CORNER.find((n) => n >= boxes) ?? MOST_BY_CORNER
  const more = boxes > MOST_BY_CORNER
  const { defines } = material
  if (defines.BY_CORNER === byCorner && 'MORE' in defines === more) return
  material.defines = { BY_CORNER: byCorner, ...(more ? { MORE: '' } : {}) }
  material.needsUpdate = true
}
