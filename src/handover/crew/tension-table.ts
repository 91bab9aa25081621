/** Tension on the indicator at other temperatures: the installed line of nominal figures, its free rope longer or shorter. */
import { unloadedLine } from '../../solver/installed'
import { type TensionAt, temperatureTable } from '../../solver/temperature-table'
import type { LineStudy } from '../../study/line-study'

export type { TensionAt } from '../../solver/temperature-table'

/** Rows from the coldest to the warmest service temperature; null where the line could not be solved. */
export function tensionTable(study: LineStudy): TensionAt[] {
  const { line, rope, model } = study.input
  const installed = study.statics.installed('nominal')
  const tensionAt = (temperature: number): number | null => {
    if (!installed.ok) return null
    const thermalFactor = 1 + rope.thermalExpansion * (temperature - line.installTemperature)
    const set = { ...installed.value.set, thermalFactor }
    const found = unloadedLine(model, { ...installed.value, set }, 'sliding')
    return found.ok ? found.value.tension : null
  }
  return temperatureTable(line.serviceTemperature, line.installTemperature, tensionAt)
}
