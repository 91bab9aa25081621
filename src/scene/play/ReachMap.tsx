/** Where on the walking surfaces one can tie off: reached ground in a plain wash, gaps in cover hatched. */
import { useEffect, useMemo } from 'react'
import { Color, DoubleSide, ShaderMaterial } from 'three'
import { usePalette } from '../palette'
import { facets } from '../shapes/solid'

export interface ReachPatch {
  /** Three corners of three coordinates for each triangle, plan coordinates, on a walking surface. */
  triangles: Float32Array
  /** In reach of some line. */
  reached: boolean
}

const vertex = /* glsl */ `
  void main() {
    vec4 p = projectionMatrix * modelViewMatrix * vec4(position, 1.0);
    p.z -= 0.0002 * p.w;
    gl_Position = p;
  }
`

const fragment = /* glsl */ `
  uniform vec3 wash;
  uniform float hatched;
  uniform float pixels;
  void main() {
    float line = step(0.6, fract((gl_FragCoord.x - gl_FragCoord.y) / (9.0 * pixels)));
    gl_FragColor = vec4(wash, mix(0.42, mix(0.12, 0.8, line), hatched));
    #include <colorspace_fragment>
  }
`

export function ReachMap({ patches }: { patches: readonly ReachPatch[] }) {
  return patches.map((patch, i) => <Patch key={i} patch={patch} />)
}

function Patch({ patch }: { patch: ReachPatch }) {
  const { holds, look } = usePalette()
  const geometry = useMemo(() => facets(patch.triangles), [patch.triangles])
  const material = useMemo(patchMaterial, [])
  useEffect(() => () => geometry.dispose(), [geometry])
  useEffect(() => () => material.dispose(), [material])
  material.uniforms.wash!.value.set(patch.reached ? holds : look)
  material.uniforms.hatched!.value = patch.reached ? 0 : 1
  return (
    <mesh
      name={patch.reached ? 'reach:in' : 'reach:out'}
      geometry={geometry}
      material={material}
      renderOrder={2}
      raycast={() => {}}
      onBeforeRender={(gl) => {
        material.uniforms.pixels!.value = gl.getPixelRatio()
      }}
    />
  )
}

const patchMaterial = (): ShaderMaterial =>
  new ShaderMaterial({
    vertexShader: vertex,
    fragmentShader: fragment,
    transparent: true,
    depthWrite: false,
    side: DoubleSide,
    uniforms: { wash: { value: new Color() }, hatched: { value: 0 }, pixels: { value: 1 } },
  })
