/** Spoils plans as files get spoilt: fields gone, moved, doubled, of another type, text cut or bent. Seeded. */
import type { Loose } from './plan-support'

/** A small generator with a seed (mulberry32). */
export function seeded(seed: number): () => number {
  let a = seed >>> 0
  return () => {
    a = (a + 0x6d2b79f5) >>> 0
    let t = a
    t = Math.imul(t ^ (t >>> 15), t | 1)
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61)
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296
  }
}

type Random = () => number
const pick = <T>(random: Random, list: readonly T[]): T => list[Math.floor(random() * list.length)]!

const deep = (): Loose => {
  let value: Loose = 1
  for (let i = 0; i < 60; i++) value = [value]
  return value
}

const ODD: (() => Loose)[] = [
  () => null,
  () => '',
  () => 'NaN',
  () => '12',
  () => '<script>alert(1)</script>',
  () => '../../x',
  () => '\u0000\u001b[31m',
  () => 'x'.repeat(25_000),
  () => true,
  () => [],
  () => ({}),
  () => [null],
  () => ({ low: 2, high: 1 }),
  () => ({ low: 1, high: 'x' }),
  () => JSON.parse('{"__proto__":{"polluted":1}}'),
  () => ({ constructor: { prototype: { polluted: 1 } } }),
  () => deep(),
  () => Array(25_000).fill(0),
  () => 0,
  () => -0,
  () => -1,
  () => 1.5,
  () => 1e-300,
  () => 5e-324,
  () => 1e300,
  () => -1e300,
  () => Number.MAX_SAFE_INTEGER + 2,
]

/** Every place of a document: its holder and key. */
function places(root: Loose): Place[] {
  const found: Place[] = []
  const walk = (value: Loose): void => {
    if (typeof value !== 'object' || value === null) return
    for (const key of Object.keys(value)) {
      found.push({ holder: value, key: Array.isArray(value) ? Number(key) : key })
      walk(value[key])
    }
  }
  walk(root)
  return found
}

interface Place {
  holder: Loose
  key: string | number
}

const NUMBERS = [-1, 0, 1e-9, 0.5, 0.999, 1.001, 2, 1e9]
const WORDS = ['L1', 'G2', 'S1', 'rope-10', 'end', 'x', 'A']

const odd = (at: Place, _other: Place, random: Random): void => {
  at.holder[at.key] = pick(random, ODD)()
}

/** What can happen to one place of a document. */
const WAYS: ((at: Place, other: Place, random: Random) => void)[] = [
  odd,
  odd,
  ({ holder, key }) => {
    if (Array.isArray(holder)) holder.splice(Number(key), 1)
    else delete holder[key]
  },
  ({ holder, key }, other) => {
    holder[key] = structuredClone(other.holder[other.key])
  },
  ({ holder, key }, other) => {
    const mine = structuredClone(holder[key])
    holder[key] = structuredClone(other.holder[other.key])
    other.holder[other.key] = mine
  },
  ({ holder, key }) => {
    if (Array.isArray(holder)) holder.push(structuredClone(holder[Number(key)]))
    else holder[`${key}x`] = holder[key]
  },
  ({ holder }) => {
    if (Array.isArray(holder)) holder.reverse()
  },
  ({ holder, key }, _other, random) => {
    if (typeof holder[key] === 'number') holder[key] *= pick(random, NUMBERS)
    if (typeof holder[key] === 'string') holder[key] = pick(random, WORDS)
  },
]

function spoilOnce(root: Loose, random: Random): void {
  const all = places(root)
  if (all.length > 0) pick(random, WAYS)(pick(random, all), pick(random, all), random)
}

function bent(text: string, random: Random): string {
  const at = Math.floor(random() * text.length)
  const ways: (() => string)[] = [
    () => text.slice(0, at),
    () => text.slice(0, at) + text.slice(at + 1 + Math.floor(random() * 40)),
    () =>
      text.slice(0, at) +
      pick(random, ['{', '}', '[', ']', '"', ',', ':', '\\', '\u0000', 'NaN', '1e999', '//']) +
      text.slice(at),
    () => text.replace(/"title"/, '"__proto__": {"polluted": 1}, "title"'),
    () => text.replace(/\d+\.\d+/g, (m) => (random() < 0.02 ? 'Infinity' : m)),
  ]
  return pick(random, ways)()
}

/** The text of a plan after one to four things happened to it. */
export function mutated(text: string, random: Random): string {
  const plan = JSON.parse(text)
  const times = 1 + Math.floor(random() * 4)
  for (let i = 0; i < times; i++) spoilOnce(plan, random)
  const spoilt = JSON.stringify(plan)
  return random() < 0.2 ? bent(spoilt, random) : spoilt
}
