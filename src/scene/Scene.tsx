/** The site in 3D: reads the store and draws; computes nothing. Goes on plainly where nothing can be drawn. */
import { Canvas, events } from '@react-three/fiber'
import { type MouseEvent, type PointerEvent, useMemo, useRef, useState } from 'react'
import { select } from '../state/actions'
import { app } from '../state/store'
import { Contents } from './Contents'
import { findDrawing } from './gl'
import { LabelLayer } from './labels/LabelLayer'
import { usePalette } from './palette'
import { CLICK_SLACK, gripsFirst } from './pick'
import { NoPicture, SceneBoundary } from './SceneFallback'
import styles from './scene.module.css'
import { sceneState } from './scene-state'

const camera = { fov: 26, near: 0.1, far: 2000, up: [0, 0, 1], position: [20, -30, 10] } as const

const pointer: typeof events = (store) => ({ ...events(store), filter: gripsFirst })

export default function Scene() {
  const drawing = useMemo(() => {
    const found = findDrawing()
    sceneState.setState({ software: found === 'software' })
    return found
  }, [])
  if (drawing === 'none') return <NoPicture why="this machine offers no WebGL 2" />
  return (
    <SceneBoundary>
      <Picture software={drawing === 'software'} />
    </SceneBoundary>
  )
}

function Picture({ software }: { software: boolean }) {
  const { paper } = usePalette()
  const [lost, setLost] = useState(0)
  const quiet = useQuietDrags()
  return (
    <div className={styles.scene} data-scene-canvas="" {...quiet}>
      <Canvas
        key={lost}
        frameloop="demand"
        flat
        dpr={software ? 1 : [1, 2]}
        gl={{ antialias: !software, powerPreference: 'high-performance' }}
        camera={{ ...camera, up: [...camera.up], position: [...camera.position] }}
        style={{ background: paper }}
        events={pointer}
        onCreated={({ gl }) => {
          gl.domElement.addEventListener('webglcontextrestored', () => setLost((n) => n + 1), { once: true })
        }}
        onPointerMissed={(e) => {
          if (e.type === 'click' && app.getState().tool.kind === 'select') select(null)
        }}
      >
        <Contents />
      </Canvas>
      <LabelLayer />
    </div>
  )
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
