import { type JSX, useEffect, useMemo, useState } from 'react'
import { SvgPicture } from '../../drawings/SvgPicture'
import { crossSection } from '../../drawings/section'
import { stack } from '../../drawings/stack'
import { screenTheme } from '../../drawings/theme'
import { formatLength } from '../../plan/units'
import type { Clash } from '../../state/clashes/clash-list'
import { useApp } from '../../state/store'
import { detailOfClash } from '../../state/study/study-client'
import type { ClashDetail } from '../../study/clash-detail'
import type { ObstacleResult } from '../../study/results'
import { useMeshBounds } from '../tape/use-mesh-bounds'
import { ClearWays } from './ClearWays'
import css from './clashes.module.css'

/** The chosen obstacle: the section at the worst station, the sum of distances there, what would clear it. */
export function ClashDetails({ clash }: { clash: Clash }): JSX.Element {
  const detail = useDetail(clash)
  const { result } = clash
  return (
    <section className={css.details} aria-label={`${clash.name} in detail`} data-testid="clash-detail">
      <h3>{clash.name}</h3>
      <Facts clash={clash} />
      {detail ? <Pictures detail={detail} clash={clash} /> : null}
      {clash.state === 'clash' && result.line ? <ClearWays obstacle={result.id} line={result.line} /> : null}
    </section>
  )
}

function useDetail({ result }: Clash): ClashDetail | null {
  const [detail, setDetail] = useState<ClashDetail | null>(null)
  useEffect(() => {
    const { line, station } = result
    let current = true
    if (line === null || station === null) setDetail(null)
    else {
      const at = {
        line,
        station,
        worker: result.worker ?? null,
        corner: result.corner ?? null,
        obstacle: result.id,
        gap: result.gap,
        ...(result.centre ? { centre: result.centre } : {}),
      }
      void detailOfClash(at).then((found) => {
        if (current) setDetail(found)
      })
    }
    return () => {
      current = false
    }
  }, [result])
  return detail
}

const cornerWords = {
  soft: 'slack end of the line’s figures',
  stiff: 'stiff end of the line’s figures',
} as const
const plateauWords = { low: 'low end of the connector’s', high: 'high end of the connector’s' } as const

function Facts({ clash }: { clash: Clash }): JSX.Element {
  const units = useApp((s) => s.units)
  const { result } = clash
  const rows: [string, string][] = []
  if (result.unknown !== undefined) rows.push(['Not known', result.unknown])
  if (result.gap !== null) {
    rows.push([
      result.gap < 0 ? 'Into the room by' : 'Room above it',
      formatLength(Math.abs(result.gap), units),
    ])
  } else if (result.horizontal !== null && result.horizontal !== undefined) {
    rows.push(['Beside the room by', formatLength(result.horizontal, units)])
  }
  const near = nearestWords(result, units)
  if (near) rows.push(['Nearest in any direction', near])
  if (result.at) rows.push(['At x, y, z', result.at.map((v) => formatLength(v, units)).join(', ')])
  if (clash.workerName) rows.push(['Whose fall', `${clash.workerName}, ${clash.lineName}`])
  if (result.corner) {
    rows.push([
      'Which figures',
      `${cornerWords[result.corner.line]}, ${plateauWords[result.corner.connector]}`,
    ])
  }
  if (result.centre) rows.push(['It stands at', result.centre.map((v) => formatLength(v, units)).join(', ')])
  if (result.note) rows.push(['Note', result.note])
  return (
    <dl className={css.facts}>
      {rows.map(([name, value]) => (
        <div key={name}>
          <dt>{name}</dt>
          <dd>{value}</dd>
        </div>
      ))}
    </dl>
  )
}

/** How near a room comes in any direction and from where on its line; nothing in a clash, or while it is computed. */
function nearestWords({ nearest, nearestAt }: ObstacleResult, units: 'us' | 'si'): string | null {
  if (!nearest) return null
  const from = nearestAt ? `, from station ${formatLength(nearestAt.station, units)}` : ''
  return `${formatLength(nearest, units)}${from}`
}

function Pictures({ detail, clash }: { detail: ClashDetail; clash: Clash }): JSX.Element | null {
  const plan = useApp((s) => s.plan)
  const units = useApp((s) => s.units)
  const meshes = useMeshBounds()
  const section = useMemo(() => {
    const { attachment, feet, ...rest } = detail
    const body = { ...(attachment ? { attachment } : {}), ...(feet ? { feet } : {}) }
    return crossSection(
      { plan, ...rest, ...body, units, meshes },
      { width: 330, height: 300, theme: screenTheme },
    )
  }, [plan, detail, units, meshes])
  const top = clash.result.gap
  const sum = detail.stack && Object.values(detail.stack).reduce((a, b) => a + b, 0)
  const there = top === null || sum === null ? null : { name: clash.name, distance: sum + top }
  return (
    <>
      {section ? <SvgPicture picture={section.picture} /> : null}
      {detail.stack ? <SvgPicture picture={stack({ ...detail.stack, there, units }, 330, 300)} /> : null}
    </>
  )
}
