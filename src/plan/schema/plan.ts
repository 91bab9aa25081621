/**
 * The plan document as a schema. It only checks: a plan that was read keeps every field of its file, also those that
 * this version does not know. What one field says about another is checked in `references`.
 */
import { z } from 'zod'
import type { Plan } from '../types'
import { basisSchema } from './basis'
import { lineSchema, workerSchema } from './line'
import { list, text } from './numbers'
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
  girders: list(girderSchema, 500),
  decks: list(deckSchema, 500).exactOptional(),
  lines: list(lineSchema, 200),
  workers: list(workerSchema, 500),
  obstacles: list(obstacleSchema, 5_000),
  parts: list(partSchema, 2_000),
  records: z.array(recordSchema).exactOptional(),
})

type Read = z.infer<typeof planSchema>
/** The types and the schema say the same: this stops compiling as soon as one of them changes alone. */
type Same<A, B> = (<T>() => T extends A ? 1 : 2) extends <T>() => T extends B ? 1 : 2 ? true : never
const same: Same<Read, Plan> = true
void same
