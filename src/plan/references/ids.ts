import { type Fault, fault, type Path, pathText, shown } from '../fault'
import { asObject, items } from './view'

interface Named {
  id: string
  path: Path
  /** Loop rows of different girders may share a name: a reference always says which girder. */
  scope: string
}

/** Ids that stand twice in one plan: a reference to them would mean two things. */
export function doubleIds(root: unknown): Fault[] {
  const first = new Map<string, Path>()
  const faults: Fault[] = []
  for (const { id, path, scope } of everyId(root)) {
    const key = `${scope}\n${id}`
    const before = first.get(key)
    if (before)
      faults.push(fault([...path, 'id'], `the id ${shown(id)} stands already at ${pathText(before)}`))
    else first.set(key, path)
  }
  return faults
}

function everyId(root: unknown): Named[] {
  const top = asObject(root)
  const found: Named[] = []
  const add = (list: unknown, path: Path, scope = ''): void => {
    items(list).forEach((raw, i) => {
      const id = asObject(raw).id
      if (typeof id === 'string') found.push({ id, path: [...path, i], scope })
    })
  }
  for (const key of ['girders', 'decks', 'lines', 'workers', 'obstacles', 'parts', 'records'])
    add(top[key], [key])
  items(top.girders).forEach((g, i) => {
    add(asObject(g).loops, ['girders', i, 'loops'], `loops of ${i}`)
  })
  items(top.lines).forEach((l, i) => {
    add(asObject(l).stanchions, ['lines', i, 'stanchions'])
    add(asObject(l).tieBacks, ['lines', i, 'tieBacks'])
  })
  return found
}
