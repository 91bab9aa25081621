/** Tells tests and tools that the scene stands, how many frames it drew, and where on the page a named object is seen. */
import { type RootState, useFrame, useThree } from '@react-three/fiber'
import { useEffect, useRef } from 'react'
import { Box3, type Object3D, Vector3 } from 'three'
import type { Vec3 } from '../../plan/types'
import { pictureStands } from '../../state/first-picture'

export interface SceneProbe {
  /** Pixel on the page of the middle of a named object, or of a point in the plan; null where it is not in the picture. */
  project: (what: string | Vec3) => { x: number; y: number } | null
  /** Frames drawn so far. */
  frames: () => number
  /** What the last frame took: calls to the graphics, and triangles. */
  drawn: () => { calls: number; triangles: number }
  /** Names of all objects. */
  names: () => string[]
}

declare global {
  interface Window {
    fallroom?: Partial<SceneProbe> & Record<string, unknown>
  }
}

export function Probe() {
  const get = useThree((s) => s.get)
  useEffect(() => {
    window.fallroom = { ...window.fallroom, ...probe(get) }
    return () => {
      document.documentElement.dataset.scene = 'gone'
    }
  }, [get])
  const drawn = useRef(false)
  useFrame(() => {
    if (drawn.current) stands()
  }, BEFORE_ALL)
  useFrame(({ gl, scene }) => {
    document.documentElement.dataset.sceneFrame = String(gl.info.render.frame)
    if (drawn.current || scene.children.length === 0) return
    drawn.current = true
    requestAnimationFrame(stands)
  })
  return null
}

/** What is drawn is seen when the page next makes a frame; if that draws again, it is seen before that is drawn. */
const BEFORE_ALL = -1000

function stands(): void {
  const root = document.documentElement.dataset
  if (root.scene === 'ready') return
  root.scene = 'ready'
  pictureStands()
}

function probe(get: () => RootState): SceneProbe {
  return {
    project: (what) => {
      const at = typeof what === 'string' ? middleOf(get().scene.getObjectByName(what)) : new Vector3(...what)
      return at && onPage(get(), at)
    },
    frames: () => get().gl.info.render.frame,
    drawn: () => {
      const { calls, triangles } = get().gl.info.render
      return { calls, triangles }
    },
    names: () => namesIn(get().scene),
  }
}

function middleOf(object: Object3D | undefined): Vector3 | null {
  if (!object) return null
  object.updateWorldMatrix(true, true)
  const box = new Box3().setFromObject(object)
  return box.isEmpty() ? object.getWorldPosition(new Vector3()) : box.getCenter(new Vector3())
}

function onPage({ camera, gl }: RootState, at: Vector3): { x: number; y: number } | null {
  camera.updateMatrixWorld()
  const p = at.clone().project(camera)
  if (p.z > 1) return null
  const box = gl.domElement.getBoundingClientRect()
  return { x: box.left + ((p.x + 1) / 2) * box.width, y: box.top + ((1 - p.y) / 2) * box.height }
}

function namesIn(root: Object3D): string[] {
  const names: string[] = []
  root.traverse((object) => {
    if (object.name) names.push(object.name)
  })
  return names
}
