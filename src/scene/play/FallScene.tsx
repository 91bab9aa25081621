/** In the Fall view: the fall that was computed, where the next one would be, and what the video is made of. */
import { useThree } from '@react-three/fiber'
import { useEffect } from 'react'
import type { Worker } from '../../plan/types'
import { type Dropped, playhead, useFall } from '../../state/fall/fall-store'
import { filmed } from '../../state/fall/film-source'
import { useApp } from '../../state/store'
import { FallPlayer } from './FallPlayer'

export function FallScene() {
  const shown = useApp((s) => s.view === 'fall')
  const dropped = useFall((s) => s.dropped)
  return shown && dropped ? <Played dropped={dropped} /> : null
}

function Played({ dropped }: { dropped: Dropped }) {
  const exaggerate = useFall((s) => s.exaggerate)
  const { study, plan } = dropped
  const { history } = study.fall
  const { gl, scene, camera } = useThree()
  useEffect(() => {
    filmed.draw = () => {
      gl.render(scene, camera)
      return gl.domElement
    }
    return () => {
      filmed.draw = null
    }
  }, [gl, scene, camera])
  if (!history) return null
  return (
    <FallPlayer
      key={history.nodes}
      history={history}
      heads={study.heads}
      workers={study.request.drops.flatMap((d): Worker[] => plan.workers.filter((w) => w.id === d.worker))}
      playhead={playhead}
      exaggerate={exaggerate}
    />
  )
}
