/**
 * Generic parts to begin from. Their figures are of the size that such parts have and belong to nobody's product: each
 * says so in its source, and a plan that is to be used needs those of the parts' own documentation.
 */
import { exampleConnectors } from './library/connectors'
import { exampleGear } from './library/gear'
import { exampleRopes } from './library/ropes'
import type { Part, PartKind, PartOf } from './types'

export { EXAMPLE_FIGURES } from './library/source'

export const partLibrary: readonly Part[] = [...exampleRopes, ...exampleConnectors, ...exampleGear]

/** The library's parts of one kind. */
export function libraryParts<K extends PartKind>(kind: K): PartOf<K>[] {
  return partLibrary.filter((p): p is PartOf<K> => p.kind === kind)
}
