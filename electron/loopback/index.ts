export { type Loopback, startLoopback } from './server'
