export { dropWorkers } from './drop'
export type * from './types'
