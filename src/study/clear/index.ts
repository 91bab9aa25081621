export { clearWays } from './clear'
export type * from './types'
