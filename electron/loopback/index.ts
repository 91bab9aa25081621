export { dataHome } from '../files/home'
export { type Loopback, type LoopbackOptions, startLoopback } from './server'
