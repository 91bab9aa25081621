/** The site in 3D: reads the store and draws; computes nothing. Goes on plainly where nothing can be drawn. */
import { Canvas, events, type GLProps } from '@react-three/fiber'
import { type MouseEvent, type PointerEvent, useCallback, useRef, useState } from 'react'
import type { WebGLRendererParameters } from 'three'
import { select } from '../state/actions'
import { pictureStands } from '../state/first-picture'
import { app } from '../state/store'
import { Contents } from './Contents'
import { SHARPNESS } from './frame/pace'
import { isSoftware, makeRenderer, SAMPLES } from './gl'
import { LabelLayer } from './labels/LabelLayer'
import { usePalette } from './palette'
import { CLICK_SLACK, gripsFirst } from './pick'
import { NoPicture, SceneBoundary } from './SceneFallback'
import styles from './scene.module.css'
import { sceneState, useSceneState } from './scene-state'

const camera = { fov: 26, near: 0.1, far: 2000, up: [0, 0, 1], position: [20, -30, 10] } as const

const pointer: typeof events = (store) => ({ ...events(store), filter: gripsFirst })

export default function Scene() {
  const [why, setWhy] = useState<string | null>(null)
  const again = useCallback(() => setWhy(null), [])
  if (why !== null) return <NoPicture why={why} again={again} />
  return (
    <SceneBoundary>
      <Picture broken={setWhy} />
    </SceneBoundary>
  )
}

function Picture({ broken }: { broken: (why: string) => void }) {
  const { paper } = usePalette()
  const software = useSceneState((s) => s.software)
  const [lost, setLost] = useState(0)
  const quiet = useQuietDrags()
  const gl = useCallback((options: WebGLRendererParameters) => rendererOr(options, broken), [broken])
  return (
    <div className={styles.scene} data-scene-canvas="" {...quiet}>
      <Canvas
        key={lost}
        frameloop="demand"
        flat
        dpr={software === false ? SAMPLES : SHARPNESS.moving}
        gl={gl as GLProps}
        camera={{ ...camera, up: [...camera.up], position: [...camera.position] }}
        events={pointer}
        onCreated={({ gl: { domElement, getContext } }) => {
          // Not before: a change while the canvas is being made would have it made twice over, with two cameras.
          sceneState.setState({ software: isSoftware(getContext()) })
          domElement.addEventListener('webglcontextrestored', () => setLost((n) => n + 1), { once: true })
        }}
        onPointerMissed={(e) => {
          if (e.type === 'click' && app.getState().tool.kind === 'select') select(null)
        }}
      >
        <color attach="background" args={[paper]} />
        <Contents />
      </Canvas>
      <LabelLayer />
    </div>
  )
}

/** The renderer; where there is none, `broken` is told and the picture waits to be taken away. */
function rendererOr(options: WebGLRendererParameters, broken: (why: string) => void) {
  try {
    return makeRenderer(options)
  } catch (error) {
    pictureStands()
    broken(error instanceof Error ? error.message : String(error))
    return new Promise(() => {})
  }
}

/** A drag with the right button pans; the menu is for a right click that stays in its place. */
function useQuietDrags() {
  const down = useRef({ x: 0, y: 0 })
  return {
    onPointerDownCapture: (e: PointerEvent) => {
      down.current = { x: e.clientX, y: e.clientY }
    },
    onContextMenuCapture: (e: MouseEvent) => {
      if (Math.hypot(e.clientX - down.current.x, e.clientY - down.current.y) <= CLICK_SLACK) return
      e.preventDefault()
      e.stopPropagation()
    },
  }
}
