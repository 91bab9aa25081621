/**
 * The plan document as a schema. It only checks: a plan that was read keeps every field of its file, also those that
 * this version does not know. What one field says about another is checked in `references`.
 */
import { z } from 'zod'
import type { Plan } from '../types'
import { basisSchema } from './basis'
import { lineSchema, workerSchema } from './line'
import { text } from './numbers'
import { partSchema } from './parts'
import { recordSchema } from './records'
import { deckSchema, girderSchema, obstacleSchema } from './site'

export const planSchema = z.object({
  format: z.literal('fallroom-plan'),
  version: z.literal(1),
  title: text,
  site: text.exactOptional(),
  notes: text.exactOptional(),
  units: z.enum(['us', 'si']),
  basis: basisSchema,
  girders: z.array(girderSchema),
  decks: z.array(deckSchema).exactOptional(),
  lines: z.array(lineSchema),
  workers: z.array(workerSchema),
  obstacles: z.array(obstacleSchema),
  parts: z.array(partSchema),
  records: z.array(recordSchema).exactOptional(),
})

type Read = z.infer<typeof planSchema>
/** The types and the schema say the same: this stops compiling as soon as one of them changes alone. */
type Same<A, B> = (<T>() => T extends A ? 1 : 2) extends <T>() => T extends B ? 1 : 2 ? true : never
const same: Same<Read, Plan> = true
void same
