/**
 * Version 0 to 1. Version 0 kept one number for the stiffness of a wire rope (EA), counted tie-back loops from 1 on the
 * girder's first row, called stanchions `posts`, and had no bracket on a stanchion but one for the whole line.
 */
import { asObject, items } from '../references/view'

type Fields = Record<string, unknown>
type Note = (text: string) => void

/** A version 0 document as version 1. What is no version 0 shape is passed on for the schema to tell. */
export function fromVersion0(document: Fields, note: Note): Fields {
  const girders = items(document.girders).map(asObject)
  return {
    ...document,
    version: 1,
    ...mapped(document, 'lines', (line) => lineOf(line, girders)),
    ...mapped(document, 'parts', (part) => partOf(part, note)),
  }
}

function mapped(document: Fields, key: string, f: (item: Fields) => Fields): Fields {
  const list = document[key]
  if (!Array.isArray(list)) return {}
  return { [key]: list.map((raw) => (typeof raw === 'object' && raw !== null ? f(raw) : raw)) }
}

function lineOf(line: Fields, girders: Fields[]): Fields {
  const { posts, bracket, ...rest } = line
  if (!Array.isArray(posts)) return line
  const girder = girders.find((g) => g.id === line.girder)
  const row = asObject(items(girder?.loops)[0]).id
  const stanchions = posts.map((p) => ({ bracket, ...asObject(p) }))
  return { ...rest, stanchions, ...mapped(rest, 'tieBacks', (t) => tieBackOf(t, row)) }
}

function tieBackOf(tieBack: Fields, row: unknown): Fields {
  const { post, ...rest } = tieBack
  const loop = (number: unknown): unknown =>
    typeof number === 'number' ? { row, index: number - 1 } : number
  return {
    ...rest,
    ...(post === undefined ? {} : { stanchion: post }),
    strapLoop: loop(tieBack.strapLoop),
    tensionerLoop: loop(tieBack.tensionerLoop),
  }
}

function partOf(part: Fields, note: Note): Fields {
  const ea = part.axialStiffness
  if (part.kind !== 'wire-rope' || typeof ea !== 'number') return part
  note(
    `Wire rope ${String(part.id)}: the file gave one stiffness; low and high were both set to it. Widen the range to what the rope's documentation says.`,
  )
  return { ...part, axialStiffness: { low: ea, high: ea } }
}
