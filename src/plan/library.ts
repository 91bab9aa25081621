/**
 * Generic parts to begin from. Their figures are of the size that such parts have and belong to nobody's product: each
 * says so in its source, and a plan that is to be used needs those of the parts' own documentation.
 */
import { exampleConnectors } from './example-parts/connectors'
import { exampleGear } from './example-parts/gear'
import { exampleRopes } from './example-parts/ropes'
import type { Part } from './types'

export const partLibrary: readonly Part[] = [...exampleRopes, ...exampleConnectors, ...exampleGear]
