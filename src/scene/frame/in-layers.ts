/**
 * Draws only what moves. While the camera stands, what has changed since it came to stand is drawn anew in each frame; all
 * the rest is kept from one frame to the next as it was drawn. A dragged stanchion among twelve lines so costs as much as
 * among one. A sheet that is looked through and stands still tints only what stands still; the picture at rest is whole.
 */
import type { Camera, Color, Object3D, Scene, WebGLRenderer } from 'three'
import { type Backdrop, makeBackdrop } from './backdrop'
import { type Looks, looksOf, viewLook } from './looks'

/** Layers of three.js: 0 has everything, for picking; one of these has each thing besides. */
const STILL = 1
const MOVING = 2

export interface LayerPainter {
  paint(scene: Scene, camera: Camera): void
  dispose(): void
}

export function layerPainter(gl: WebGLRenderer): LayerPainter {
  const backdrop = makeBackdrop(gl.getContext() as WebGL2RenderingContext)
  const moving = new Set<Object3D>()
  let view = Number.NaN
  let looks: Looks = new Map()
  let kept = false
  let able = true

  /** Whether what was kept still serves; what has changed moves from now on. */
  const follow = (now: Looks): boolean => {
    let serves = true
    const moves = (o: Object3D): void => {
      if (!moving.has(o)) serves = false
      moving.add(o)
    }
    for (const [o, look] of now) if (looks.get(o) !== look) moves(o)
    for (const o of looks.keys()) {
      if (now.has(o)) continue
      if (!moving.delete(o)) serves = false
    }
    return serves
  }

  /** Everything; how it looks is taken down after, since some of it is settled by drawing. */
  const drawWhole = (scene: Scene, camera: Camera): void => {
    moving.clear()
    kept = false
    gl.render(scene, camera)
    looks = looksOf(scene)
  }

  return {
    paint: (scene, camera) => {
      scene.updateMatrixWorld()
      camera.updateMatrixWorld()
      const seen = viewLook(scene, camera, [gl.domElement.width, gl.domElement.height])
      if (seen !== view || !able) {
        view = seen
        return drawWhole(scene, camera)
      }
      const now = looksOf(scene)
      kept = follow(now) && kept
      looks = now
      if (moving.size === 0) return gl.render(scene, camera)
      sort(now.keys(), moving)
      if (kept) backdrop.show()
      else able = kept = drawStill(gl, scene, camera, backdrop)
      drawMoving(gl, scene, camera)
    },
    dispose: () => backdrop.dispose(),
  }
}

function sort(all: Iterable<Object3D>, moving: ReadonlySet<Object3D>): void {
  for (const o of all) {
    const [on, off] = moving.has(o) ? [MOVING, STILL] : [STILL, MOVING]
    o.layers.enable(on)
    o.layers.disable(off)
  }
}

function drawStill(gl: WebGLRenderer, scene: Scene, camera: Camera, backdrop: Backdrop): boolean {
  drawLayer(gl, scene, camera, STILL)
  return backdrop.keep()
}

/** On top of what is there, so without the ground colour, which would wipe it. */
function drawMoving(gl: WebGLRenderer, scene: Scene, camera: Camera): void {
  const { background } = scene
  scene.background = null
  gl.autoClear = false
  drawLayer(gl, scene, camera, MOVING)
  gl.autoClear = true
  scene.background = background as Color
}

/** Lights shine in every layer. */
function drawLayer(gl: WebGLRenderer, scene: Scene, camera: Camera, layer: number): void {
  scene.traverse((o) => {
    if ('isLight' in o) o.layers.enableAll()
  })
  camera.layers.set(layer)
  gl.render(scene, camera)
  camera.layers.set(0)
}
