/** What lies under a point of the site: for where a body comes to rest, and for what it may strike on its way. */
import type { Top } from '../../geometry/gaps'

/** The upper side of something at one place in plan. */
export interface Under {
  id: string
  name: string
  kind: Top['kind']
  /** Elevation of its upper side there, m; of a lane: the top of the clear height kept for traffic. */
  top: number
}

/** Everything under (x, y) with its top below `below` (elevation, m), highest first. Of what travels: anywhere on its way. */
export function beneath(tops: Top[], x: number, y: number, below: number): Under[] {
  return tops
    .flatMap(({ id, name, kind, topAt }): Under[] => {
      const top = topAt(x, y, below)
      return top === null ? [] : [{ id, name, kind, top }]
    })
    .sort((a, b) => b.top - a.top)
}
