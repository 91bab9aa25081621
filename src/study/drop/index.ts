export { dropWorkers } from './drop'
export { type FallSeries, seriesOf } from './series'
export type { DropStack } from './stack'
export type * from './types'
