/** The tapes of the lines that changed, before above after, as wide as the panel. */
import { useElementSize } from '@mantine/hooks'
import { type JSX, useMemo } from 'react'
import { SvgPicture } from '../../drawings/SvgPicture'
import { screenTheme } from '../../drawings/theme'
import { tapePairs } from '../../handover/compare/tapes'
import type { Compared } from '../../handover/worker/papers-worker'
import { useApp } from '../../state/store'

/** Of one tape, px. */
const HEIGHT = 150

export function TapePairs({ compared }: { compared: Compared }): JSX.Element {
  const { ref, width } = useElementSize<HTMLDivElement>()
  const units = useApp((s) => s.units)
  const pairs = useMemo(() => {
    const { before, after, comparison } = compared
    const size = { width, height: HEIGHT, theme: screenTheme, units }
    return width > 0 ? tapePairs(before, after, comparison, size) : []
  }, [compared, width, units])
  return (
    <div ref={ref}>
      {pairs.map((p) => (
        <figure key={p.line} style={{ margin: '8px 0' }} aria-label={`Tapes of ${p.name}, before and after`}>
          <figcaption>{p.name}</figcaption>
          <SvgPicture picture={p.picture} />
        </figure>
      ))}
    </div>
  )
}
