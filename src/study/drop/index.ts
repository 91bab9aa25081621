export { dropWorkers } from './drop'
export { type FallSeries, seriesOf } from './series'

export type * from './types'
