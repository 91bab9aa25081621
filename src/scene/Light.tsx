/** Even daylight over a drafting table: soft from above, a little warmer back from below, one weak direction for relief. */
import { useApp } from '../state/store'

const strength = {
  light: { sky: 2.55, sun: 1.0, ground: '#ddd6c8' },
  dark: { sky: 2.1, sun: 1.0, ground: '#6d6a63' },
  sunlight: { sky: 2.5, sun: 1.0, ground: '#bdbdbd' },
} as const

export function Light() {
  const { sky, sun, ground } = strength[useApp((s) => s.theme)]
  return (
    <>
      <hemisphereLight args={['#ffffff', ground, sky]} position={[0, 0, 1]} />
      <directionalLight intensity={sun} position={[-3, -5, 8]} />
    </>
  )
}
