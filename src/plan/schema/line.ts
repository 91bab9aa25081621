import { z } from 'zod'
import { bodyMass, count, distance, force, id, list, offset, range, size, temperature, text } from './numbers'

export const stanchionSchema = z.object({
  id,
  role: z.enum(['end', 'intermediate']),
  station: distance,
  offset,
  part: id,
  bracket: id,
  plate: distance.exactOptional(),
})

const loopRefSchema = z.object({ row: id, index: count })

export const tieBackSchema = z.object({
  id,
  stanchion: id,
  part: id,
  strapLoop: loopRefSchema,
  tensionerLoop: loopRefSchema,
})

export const lineSchema = z.object({
  id,
  name: text,
  girder: id,
  stanchions: list(stanchionSchema, 200),
  tieBacks: list(tieBackSchema, 200),
  wireRope: id,
  absorber: id.nullable(),
  absorberAt: z.enum(['start', 'end']),
  hardware: list(id, 50),
  pretension: force,
  pretensionTolerance: z.number().min(0).max(0.99),
  installTemperature: temperature,
  serviceTemperature: range(temperature),
  grip: z.enum(['sliding', 'held']).exactOptional(),
  workersAtOnce: z.int().min(1).max(50),
})

export const workerSchema = z.object({
  id,
  name: text,
  line: id,
  mass: bodyMass,
  dRingHeight: size,
  harnessStretch: distance,
  connector: id,
})
