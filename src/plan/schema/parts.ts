import { z } from 'zod'
import { bodyMass, distance, force, id, mass, range, size, source, stiffness, text } from './numbers'

const common = { id, name: text, source }

const fraction = z.number().min(0.01).max(1)

const wireRopeSchema = z.object({
  ...common,
  kind: z.literal('wire-rope'),
  diameter: size,
  construction: text,
  breakingStrength: force,
  axialStiffness: range(stiffness),
  massPerMetre: mass,
  thermalExpansion: z.number().min(0).max(0.001),
  termination: fraction,
  constructionalStretch: z.number().min(0).max(0.1).exactOptional(),
})

const lineAbsorberSchema = z
  .object({
    ...common,
    kind: z.literal('line-absorber'),
    onset: range(force),
    full: range(force),
    maxExtension: size,
    breakingStrength: force,
    length: distance,
  })
  .refine((a) => a.full.low > a.onset.low && a.full.high > a.onset.high, {
    error: 'the force at full extension must be above the force at onset, at the low and at the high end',
    path: ['full'],
  })

const connectorSchema = z.object({
  ...common,
  kind: z.literal('connector'),
  type: z.enum(['lanyard', 'retractable']),
  length: size,
  stiffness,
  plateau: range(force),
  maxExtension: distance,
  maxForce: force,
  ratedFreeFall: size,
  ratedMass: range(bodyMass).exactOptional(),
})

const stanchionPartSchema = z.object({
  ...common,
  kind: z.literal('stanchion'),
  height: size,
  headStiffness: stiffness,
  headCapacity: force,
  axialCapacity: force,
  mass,
})

const bracketSchema = z.object({
  ...common,
  kind: z.literal('bracket'),
  tubeLength: size,
  boltsAlong: size,
  boltsAcross: distance,
  upliftCapacity: force,
})

const tieBackPartSchema = z.object({
  ...common,
  kind: z.literal('tie-back'),
  length: size,
  wrapLength: distance,
  stiffness,
  breakingStrength: force,
})

const hardwareSchema = z.object({
  ...common,
  kind: z.literal('hardware'),
  breakingStrength: force,
  length: distance,
})

export const partSchema = z.discriminatedUnion('kind', [
  wireRopeSchema,
  lineAbsorberSchema,
  connectorSchema,
  stanchionPartSchema,
  bracketSchema,
  tieBackPartSchema,
  hardwareSchema,
])
