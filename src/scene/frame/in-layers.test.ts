import {
  BoxGeometry,
  type Camera,
  Color,
  DirectionalLight,
  InstancedMesh,
  Matrix4,
  Mesh,
  MeshLambertMaterial,
  type Object3D,
  PerspectiveCamera,
  Scene,
  ShaderMaterial,
  type WebGLRenderer,
} from 'three'
import { expect, it } from 'vitest'
import { layerPainter } from './in-layers'
import { looksOf } from './looks'

const box = (name: string): Mesh => {
  const mesh = new Mesh(new BoxGeometry(), new MeshLambertMaterial({ color: 'red' }))
  mesh.name = name
  return mesh
}

/** A renderer that only tells what it was asked to draw, and a canvas that copies as told. */
function recorder(copies = true) {
  const drawn: string[] = []
  let failed = false
  const blit = (): void => {
    drawn.push('copy')
    failed = !copies
  }
  /** Told once, as a context does. */
  const fault = (): number => {
    const told = failed ? 1282 : 0
    failed = false
    return told
  }
  const context = new Proxy(
    { drawingBufferWidth: 8, drawingBufferHeight: 8, NO_ERROR: 0, log: drawn },
    {
      get: (of, key) => {
        if (key in of) return of[key as keyof typeof of]
        if (key === 'getError') return fault
        if (key === 'blitFramebuffer') return blit
        return () => null
      },
    },
  )
  const render = (scene: Scene, camera: Camera): void => {
    const names: string[] = []
    scene.traverseVisible((o: Object3D) => {
      if ((o as Mesh).isMesh && o.layers.test(camera.layers)) names.push(o.name)
    })
    drawn.push(`${scene.background ? 'wipe ' : ''}${names.join(' ')}`)
  }
  const gl = { domElement: { width: 8, height: 8 }, getContext: () => context, render, autoClear: true }
  const take = (): string[] => drawn.splice(0)
  return { gl: gl as unknown as WebGLRenderer, take }
}

function site() {
  const scene = new Scene()
  scene.background = new Color('white')
  const [post, girder] = [box('post'), box('girder')]
  scene.add(post, girder, new DirectionalLight())
  return { scene, post, girder, camera: new PerspectiveCamera() }
}

it('draws anew only what moves, over a copy of what stands still', () => {
  const { gl, take } = recorder()
  const { scene, post, camera } = site()
  const painter = layerPainter(gl)
  painter.paint(scene, camera)
  expect(take()).toEqual(['wipe post girder'])
  post.position.x = 1
  painter.paint(scene, camera)
  expect(take()).toEqual(['wipe girder', 'copy', 'post'])
  post.position.x = 2
  painter.paint(scene, camera)
  expect(take()).toEqual(['copy', 'post'])
})

it('takes in what begins to move, comes or goes, and draws all when the camera or the ground colour changes', () => {
  const { gl, take } = recorder()
  const { scene, post, girder, camera } = site()
  const painter = layerPainter(gl)
  const paint = (): string[] => {
    painter.paint(scene, camera)
    return take()
  }
  paint()
  post.position.x = 1
  paint()
  ;(girder.material as MeshLambertMaterial).color.set('blue')
  expect(paint()).toEqual(['wipe ', 'copy', 'post girder'])
  scene.add(box('new'))
  expect(paint()).toEqual(['wipe ', 'copy', 'post girder new'])
  girder.visible = false
  expect(paint()).toEqual(['copy', 'post new'])
  camera.position.z = 5
  expect(paint()).toEqual(['wipe post new'])
  ;(scene.background as Color).set('black')
  expect(paint()).toEqual(['wipe post new'])
})

it('takes away what stood still', () => {
  const { gl, take } = recorder()
  const { scene, post, girder, camera } = site()
  const painter = layerPainter(gl)
  painter.paint(scene, camera)
  post.position.x = 1
  painter.paint(scene, camera)
  take()
  girder.visible = false
  painter.paint(scene, camera)
  expect(take()).toEqual(['wipe ', 'copy', 'post'])
})

it('draws all in every frame where the canvas can not be copied', () => {
  const { gl, take } = recorder(false)
  const { scene, post, camera } = site()
  const painter = layerPainter(gl)
  for (const x of [0, 1, 2]) {
    post.position.x = x
    painter.paint(scene, camera)
  }
  expect(take().slice(-2)).toEqual(['post', 'wipe post girder'])
})

it('sees every change that would look different', () => {
  const scene = new Scene()
  const skin = new Mesh(
    new BoxGeometry(),
    new ShaderMaterial({ uniforms: { boxes: { value: [new Matrix4()] } } }),
  )
  const loops = new InstancedMesh(new BoxGeometry(), new MeshLambertMaterial(), 2)
  const plain = box('plain')
  scene.add(skin, loops, plain)
  const material = plain.material as MeshLambertMaterial
  const changes: [Mesh, () => void][] = [
    [skin, () => (skin.material as ShaderMaterial).uniforms.boxes!.value[0].makeScale(2, 1, 1)],
    [loops, () => (loops.instanceMatrix.needsUpdate = true)],
    [loops, () => (loops.count = 1)],
    [plain, () => material.color.set('green')],
    [plain, () => (material.opacity = 0.5)],
    [plain, () => (plain.geometry = new BoxGeometry(2))],
    [plain, () => (plain.geometry.attributes.position!.needsUpdate = true)],
    [plain, () => (plain.position.y = 1e-6)],
    [plain, () => (plain.renderOrder = 3)],
  ]
  for (const [mesh, change] of changes) {
    scene.updateMatrixWorld()
    const before = looksOf(scene)
    change()
    scene.updateMatrixWorld()
    const after = looksOf(scene)
    const changed = [...after].filter(([o, look]) => before.get(o) !== look).map(([o]) => o)
    expect(changed, String(change)).toEqual([mesh])
  }
})
