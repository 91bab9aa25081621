import { z } from 'zod'
import { angle, count, distance, factor, force, range, size, text } from './numbers'

/** Limits and margins. */
export const basisSchema = z.object({
  name: z.enum(['us', 'ca', 'eu', 'custom']),
  safetyFactor: factor,
  maxArrestForce: force,
  maxFreeFall: size,
  maxDeceleration: size,
  marginBelow: distance,
  marginSide: distance,
  bodyRadius: distance,
  minTieBackAngle: angle,
  minLoopsEngaged: count,
  minLoopsBeside: count,
  minBarDiameter: distance,
  boltEdge: distance,
  plateThickness: distance,
  eyeOffset: range(distance),
  maxSlope: angle,
  maxSpan: size.exactOptional(),
  sources: z.record(z.string(), text),
})
