/** Workers who stand on their lines, hooked on: one figure for those of a line, scaled to each. */
import { useEffect, useMemo } from 'react'
import { Matrix4, Vector3 } from 'three'
import { girderFrame } from '../../geometry/girder'
import type { Girder, Line } from '../../plan/types'
import { useApp } from '../../state/store'
import { Copies } from '../Copies'
import { useNotShown } from '../compare/stepped-aside'
import { Ink } from '../Ink'
import { usePalette } from '../palette'
import { useFocusLine } from '../pictures'
import { useSceneState } from '../scene-state'
import { type Standing, standingCrew } from '../shapes/crew'
import { D_RING_PART, figure } from '../shapes/figure'
import { eachLine } from './EachLine'

export const Crew = eachLine(function CrewOfLine({ line, girder }) {
  const { ink } = usePalette()
  const crew = useCrew(line, girder)
  const connectors = useMemo(() => crew.flatMap((c) => [...c.dRing, ...c.rope]), [crew])
  return (
    <>
      <Figures name={`crew:${line.id}`} girder={girder} crew={crew} />
      <Ink points={connectors} color={ink} width={1.25} />
    </>
  )
})

function useCrew(line: Line, girder: Girder): Standing[] {
  const workers = useApp((s) => s.plan.workers)
  const hidden = useNotShown()
  const playing = useSceneState((s) => s.playing)
  const detail = useApp((s) => s.study.details.find((d) => d.id === line.id))
  const focused = useFocusLine() === line.id
  return useMemo(() => {
    if (playing && focused) return []
    const fallen = focused ? (detail?.governing?.worker ?? null) : null
    return standingCrew(workers, line, girder, detail, fallen).filter((c) => !hidden.includes(c.worker.id))
  }, [line, girder, workers, hidden, detail, focused, playing])
}

interface FiguresProps {
  name: string
  girder: Girder
  crew: readonly Standing[]
}

function Figures({ name, girder, crew }: FiguresProps) {
  const { ink } = usePalette()
  const body = useMemo(() => figure('standing'), [])
  useEffect(() => () => body.dispose(), [body])
  const places = useMemo(() => {
    const { along } = girderFrame(girder)
    return crew.map((c) => standing(c, Math.atan2(along[1], along[0])))
  }, [crew, girder])
  return <Copies name={name} body={body} places={places} color={ink} />
}

function standing({ feet, worker }: Standing, heading: number): Matrix4 {
  const tall = worker.dRingHeight / D_RING_PART
  return new Matrix4()
    .makeTranslation(...feet)
    .multiply(new Matrix4().makeRotationZ(heading))
    .scale(new Vector3(tall, tall, tall))
}
