/** Who may be on a line, and with what. */
import type { LineStudy } from '../../study/line-study'

export interface Connector {
  worker: string
  mass: number
  connector: string
  length: number
}

export const workersOf = (study: LineStudy): Connector[] =>
  study.input.workers.map(({ worker, connector }) => ({
    worker: worker.name,
    mass: worker.mass,
    connector: connector.name,
    length: connector.length,
  }))
