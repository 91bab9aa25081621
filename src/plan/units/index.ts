/** Lengths, forces and the rest as people type and read them. Inside the program everything is SI. */
export { formatAngle, parseAngle } from './angle'
export { FOOT, INCH, POUND, POUND_FORCE, PSI } from './factors'
export { formatForce, parseForce } from './force'
export { formatFeetInches, formatLength, formatMillimetres, parseLength } from './length'
export { formatMass, parseMass } from './mass'
export { type Parsed, parseNumber, type UnitSystem } from './number'
export { formatBoth, formatQuantity, parseQuantity, unitNames } from './quantity'
export { formatTemperature, parseTemperature } from './temperature'
