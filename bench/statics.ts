/** Static solves: one loaded four-span line, a whole line law, and how both grow with spans. */
import { installedLine, unloadedLine } from '../src/solver/installed'
import { lineLaw } from '../src/solver/line-law'
import { solveLoadedChain } from '../src/solver/loaded'
import type { LineModel } from '../src/solver/model'
import { hasCalculix, solveSpan } from '../tests/support/calculix'
import { type Timed, timed } from './harness'

function model(spans: number): LineModel {
  const x = Array.from({ length: spans + 1 }, (_, i) => 9 * i)
  return {
    x,
    z: x.map((v) => 15 + 0.01 * v),
    massPerMetre: 0.362,
    thermalExpansion: 1.2e-5,
    axialStiffness: { low: 2.6e6, high: 3.9e6 },
    absorber: { onset: { low: 8000, high: 9500 }, full: { low: 10000, high: 12000 }, maxExtension: 1.07 },
    absorberAt: 'end',
    pretension: 4450,
    pretensionTolerance: 0.1,
    installTemperature: 15,
    serviceTemperature: { low: -15, high: 40 },
    endStiffness: [290000, 300000],
    endMass: [5, 5],
  }
}

function unloaded(spans: number) {
  const installed = installedLine(model(spans), 'soft')
  if (!installed.ok) throw new Error(installed.why)
  const line = unloadedLine(model(spans), installed.value, 'sliding')
  if (!line.ok) throw new Error(line.why)
  return line.value
}

/** A thousand cold solves (no neighbouring solution to start from), so that one is a thousandth of the figure. */
function solves(spans: number): Timed {
  const line = unloaded(spans)
  const others = line.spans.map((s, i) => (i === 0 ? undefined : s))
  return timed(`1,000 static solves from cold, ${spans} span${spans > 1 ? 's' : ''}`, () => {
    const H: number[] = []
    for (let i = 0; i < 1000; i++) {
      const s = solveLoadedChain(line.chains[0]!, 0, 4.5, 500 + 4 * i, { H: line.spans[0]!.H, others })
      if (!s) throw new Error(`no solution at ${500 + 4 * i} N`)
      H.push(s.H)
    }
    return H
  })
}

function law(spans: number): Timed {
  const line = unloaded(spans)
  return timed(
    `one line law (d and U up to 4.7 kN), ${spans} spans`,
    () => {
      const made = lineLaw(line, 0, 4.5, 4700)
      if (!made.ok) throw new Error(made.why)
      return made.value.nodes.map((n) => n.U)
    },
    41,
  )
}

/** The same span by a finite-element program as a whole process, where it is installed. */
function elements(): Timed[] {
  if (!hasCalculix()) return []
  const span = { X: 9, Z: 0, EA: 2.6e6, w: 3.55, rope: 8.985, P: 4000, share: 0.5 }
  return [timed('one span by CalculiX, whole process', () => [solveSpan(span).first], 5, 1)]
}

export function bench(): Timed[] {
  const four = solves(4)
  const fe = elements()
  const ratio = fe[0]
    ? [{ ...fe[0], note: `${Math.round(fe[0].median / (four.median / 1000))} times one four-span solve` }]
    : []
  return [solves(1), four, solves(16), law(4), law(16), ...ratio]
}
