import { expect, it } from 'vitest'
import { receiver, sender } from './unchanged'

interface Thing {
  id: string
  value: number
}

const things = (...values: number[]): Thing[] => values.map((value, i) => ({ id: `T${i}`, value }))

it('gives on the other side what went in, and sends only what changed', () => {
  const send = sender<Thing>((t) => t.id)
  const receive = receiver<Thing>()
  const first = things(1, 2, 3)
  const got = receive(structuredClone(send(first)))
  expect(got).toEqual(first)
  const second = [first[2]!, first[0]!, { id: 'T1', value: 9 }]
  const sent = structuredClone(send(second))
  expect(sent.filter((s) => 'value' in s)).toEqual([{ key: 'T1', value: { id: 'T1', value: 9 } }])
  const then = receive(sent)
  expect(then).toEqual(second)
  expect(then[0]).toBe(got[2])
  expect(then[1]).toBe(got[0])
})

it('loses none of several with one key', () => {
  const send = sender<Thing>((t) => t.id)
  const receive = receiver<Thing>()
  const twice = [things(1)[0]!, things(2)[0]!]
  expect(receive(structuredClone(send(twice)))).toEqual(twice)
  expect(receive(structuredClone(send(twice)))).toEqual(twice)
})

it('does not make up what it was never sent', () => {
  expect(() => receiver<Thing>()([{ key: 'T0' }])).toThrow('T0')
})
