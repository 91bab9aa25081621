import { z } from 'zod'
import {
  coordinate,
  distance,
  id,
  list,
  offset,
  positiveCount,
  size,
  stress,
  text,
  turn,
  vec2,
  vec3,
} from './numbers'

export const loopRowSchema = z.object({
  id,
  first: offset,
  spacing: size,
  count: positiveCount,
  offset,
  barDiameter: size,
  yieldStress: stress,
  height: size,
})

const sectionSchema = z.object({
  topWidth: size,
  topThickness: size,
  webThickness: size,
  bottomWidth: size,
  bottomThickness: size,
  depth: size,
})

/** A girder by itself; `references` checks what hangs together. */
export const girderSchema = z.object({
  id,
  name: text,
  start: vec3,
  end: vec3,
  material: z.enum(['concrete', 'steel']),
  section: sectionSchema,
  loops: list(loopRowSchema, 50),
})

export const deckSchema = z.object({
  id,
  name: text,
  outline: list(vec2, 500, 3),
  elevation: coordinate,
})

const common = { id, name: text, margin: distance.exactOptional() }

export const obstacleSchema = z.discriminatedUnion('kind', [
  z.object({ ...common, kind: z.literal('ground'), elevation: coordinate }),
  z.object({ ...common, kind: z.literal('water'), elevation: coordinate, depth: distance.exactOptional() }),
  z.object({
    ...common,
    kind: z.literal('box'),
    center: vec3,
    size: z.tuple([size, size, size]),
    turn: turn.exactOptional(),
    travel: list(vec3, 500).exactOptional(),
  }),
  z.object({
    ...common,
    kind: z.literal('lane'),
    path: list(vec3, 500, 2),
    width: size,
    clearHeight: size,
  }),
  z.object({
    ...common,
    kind: z.literal('mesh'),
    file: text,
    at: vec3.exactOptional(),
    turn: turn.exactOptional(),
    scale: size.exactOptional(),
    upAxis: z.enum(['y', 'z']).exactOptional(),
    fileHash: text.exactOptional(),
  }),
  z.object({
    ...common,
    kind: z.literal('cross-frame'),
    between: z.tuple([id, id]),
    station: distance,
    barSize: size,
  }),
])
