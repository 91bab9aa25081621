import { z } from 'zod'
import { distance, force, id, list, text } from './numbers'

/** A calendar date, or a date with its time of day and zone. */
const moment = z.union([z.iso.date(), z.iso.datetime({ offset: true, local: true })], {
  error: 'must be a date and time like 2031-05-14T07:30:00Z',
})

const common = { id, at: moment, by: text, note: text.exactOptional() }

export const recordSchema = z.discriminatedUnion('kind', [
  z.object({
    ...common,
    kind: z.literal('rescue-plan'),
    line: id,
    method: text,
    gear: text,
    people: z.int().min(0).max(1_000),
    minutes: z.number().min(0).max(10_000),
  }),
  z.object({ ...common, kind: z.literal('approval'), planHash: text }),
  z.object({
    ...common,
    kind: z.literal('as-built'),
    line: id,
    stations: z.record(z.string(), distance),
    tension: force,
  }),
  z.object({
    ...common,
    kind: z.literal('inspection'),
    line: id,
    items: list(z.object({ id, result: z.enum(['pass', 'fail', 'n/a']), note: text.exactOptional() }), 500),
    photos: list(text, 500).exactOptional(),
  }),
  z.object({
    ...common,
    kind: z.literal('daily'),
    line: id,
    tension: z.number().min(0).max(1e9).nullable(),
    passed: z.boolean(),
  }),
  z.object({ ...common, kind: z.enum(['out-of-service', 'in-service', 'retired']), line: id, reason: text }),
  z.object({ ...common, kind: z.literal('finding-note'), rule: text, subject: text, text }),
])
