/** The number of every fifth loop, counted as people count, over the loops of the girders in hand; one draw call. */
import { useThree } from '@react-three/fiber'
import { useEffect, useMemo } from 'react'
import { InstancedBufferAttribute, InstancedBufferGeometry, PlaneGeometry } from 'three'
import { loopNumber, loopStation } from '../../geometry/loops'
import type { Girder, Plan, Vec3 } from '../../plan/types'
import { lineOfRef, type Ref, resolveRef } from '../../state/refs'
import { useApp } from '../../state/store'
import { usePalette } from '../palette'
import { useFocusLine, useLineGirder } from '../pictures'
import { overGirder } from '../place'
import { useSceneState } from '../scene-state'
import { mergeInstances } from '../shapes/merged'
import { type NumberAtlas, numberAtlas } from '../shapes/number-atlas'
import { numberMaterial } from '../shapes/number-material'

const EVERY = 5

export function LoopNumbers() {
  const girders = useGirdersInHand()
  const { quiet } = usePalette()
  const size = useThree((s) => s.size)
  const marks = useMemo(() => girders.flatMap(fifths), [girders])
  const most = marks.reduce((n, m) => Math.max(n, m.number), EVERY)
  const atlas = useMemo(() => numberAtlas(multiples(most)), [most])
  const material = useMemo(() => numberMaterial(atlas.texture, atlas.rows), [atlas])
  const software = useSceneState((s) => s.software)
  const geometry = useMemo(() => {
    const instanced = markGeometry(marks, atlas)
    return software === false ? instanced : mergeInstances(instanced)
  }, [marks, atlas, software])
  useEffect(() => () => geometry.dispose(), [geometry])
  useEffect(
    () => () => {
      material.dispose()
      atlas.texture.dispose()
    },
    [material, atlas],
  )
  material.uniforms.ink!.value.set(quiet)
  material.uniforms.screen!.value.set(size.width, size.height)
  return (
    <mesh
      name="loop-numbers"
      geometry={geometry}
      material={material}
      frustumCulled={false}
      renderOrder={9}
      raycast={() => {}}
    />
  )
}

/** The girder of the line looked at, and those of what is selected; all where there are no lines yet. */
function useGirdersInHand(): Girder[] {
  const plan = useApp((s) => s.plan)
  const selection = useApp((s) => s.selection)
  const hidden = useApp((s) => s.hidden)
  const focus = useLineGirder(useFocusLine())?.id
  const { girders } = plan
  const without = plan.lines.length === 0
  // biome-ignore lint/correctness/useExhaustiveDependencies: the choice depends on these parts of the plan alone
  return useMemo(() => {
    const held = selection.flatMap((ref) => girderOfRef(plan, ref)?.id ?? [])
    const wanted = (g: Girder): boolean => without || g.id === focus || held.includes(g.id)
    return girders.filter((g) => wanted(g) && !hidden.includes(g.id))
  }, [girders, without, selection, hidden, focus])
}

function girderOfRef(plan: Plan, ref: Ref): Girder | undefined {
  const found = resolveRef(plan, ref)
  if (found?.kind === 'girder' || found?.kind === 'loop-row') return found.girder
  const line = lineOfRef(plan, ref)
  return plan.girders.find((g) => g.id === line?.girder)
}

const multiples = (most: number): number[] =>
  Array.from({ length: Math.ceil(most / EVERY) }, (_, i) => (i + 1) * EVERY)

interface Mark {
  at: Vec3
  number: number
}

function fifths(girder: Girder): Mark[] {
  return girder.loops.flatMap((row) =>
    Array.from({ length: Math.floor(row.count / EVERY) }, (_, i) => {
      const index = (i + 1) * EVERY - 1
      const at = overGirder(girder, loopStation(row, index), row.offset, row.height)
      return { at, number: loopNumber(index) }
    }),
  )
}

function markGeometry(marks: readonly Mark[], atlas: NumberAtlas): InstancedBufferGeometry {
  const plane = new PlaneGeometry(1, 1)
  const geometry = new InstancedBufferGeometry()
  geometry.setIndex(plane.index)
  geometry.setAttribute('position', plane.getAttribute('position'))
  geometry.setAttribute('at', new InstancedBufferAttribute(new Float32Array(marks.flatMap((m) => m.at)), 3))
  const cells = marks.flatMap((m) => atlas.cell(m.number))
  geometry.setAttribute('cell', new InstancedBufferAttribute(new Float32Array(cells), 2))
  geometry.instanceCount = marks.length
  return geometry
}
