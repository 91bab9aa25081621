export * from './lanyard'
export * from './pretension'
export * from './sag'
export * from './tie-back'
