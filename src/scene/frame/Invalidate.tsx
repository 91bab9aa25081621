/** A frame is drawn when something that the picture shows has changed, and only then. */
import { useThree } from '@react-three/fiber'
import { useEffect } from 'react'
import { beside } from '../../state/compare/beside'
import { app } from '../../state/store'
import { onModels } from '../models'
import { sceneState } from '../scene-state'

export function Invalidate() {
  const invalidate = useThree((s) => s.invalidate)
  useEffect(() => app.subscribe((now, was) => changesPicture(now, was) && invalidate()), [invalidate])
  useEffect(() => sceneState.subscribe(() => invalidate()), [invalidate])
  useEffect(() => beside.subscribe(() => invalidate()), [invalidate])
  useEffect(() => onModels(() => invalidate()), [invalidate])
  return null
}

type Shown = ReturnType<typeof app.getState>

const shown: (keyof Shown)[] = [
  'plan',
  'selection',
  'hover',
  'theme',
  'units',
  'hidden',
  'tapeLine',
  'ghost',
  'view',
  'hoverFinding',
  'finding',
]

/** Of the study; how far it has come is not in the picture. */
const studied = ['results', 'details', 'skins'] as const

const changesPicture = (now: Shown, was: Shown): boolean =>
  shown.some((key) => now[key] !== was[key]) || studied.some((key) => now.study[key] !== was.study[key])
