/**
 * Shapes of girders to begin from. Depths are published; widths and thicknesses are as the source of each says. The
 * drawings of the bridge govern.
 */
import type { Girder, GirderSection } from './types'
import { INCH } from './units/factors'

export interface SectionShape {
  id: string
  name: string
  material: Girder['material']
  section: GirderSection
  /** Where the depth, and where the rest comes from. */
  sources: { depth: string; others: string }
}

const MEMORY = 'value from memory: check against the drawings'
const PCI = 'PCI Journal, May-June 2021, appendix (Brice and Pickings): Yt + Yb (read in a secondary source)'
const EXAMPLE = 'example figures: replace with those of the drawings'

/** Inches: depth, top width, top thickness, web, bottom width, bottom thickness. */
type Inches = [number, number, number, number, number, number]

function shape(id: string, name: string, inches: Inches, depth: string, others: string): SectionShape {
  const [d, tw, tt, w, bw, bt] = inches.map((x) => Number((x * INCH).toFixed(4))) as Inches
  return {
    id,
    name,
    material: 'concrete',
    section: {
      topWidth: tw,
      topThickness: tt,
      webThickness: w,
      bottomWidth: bw,
      bottomThickness: bt,
      depth: d,
    },
    sources: { depth, others },
  }
}

const concrete = [
  shape('aashto-i', 'AASHTO type I', [28, 12, 4, 6, 16, 5], PCI, MEMORY),
  shape('aashto-ii', 'AASHTO type II', [36, 12, 6, 6, 18, 6], PCI, MEMORY),
  shape('aashto-iii', 'AASHTO type III', [45, 16, 7, 7, 22, 7], PCI, MEMORY),
  shape('aashto-iv', 'AASHTO type IV', [54, 20, 8, 8, 26, 8], PCI, MEMORY),
  shape('aashto-v', 'AASHTO type V', [63, 42, 5, 8, 28, 8], PCI, MEMORY),
  shape('aashto-vi', 'AASHTO type VI', [72, 42, 5, 8, 28, 8], MEMORY, MEMORY),
  shape('bulb-tee-54', 'PCI bulb-tee BT-54', [54, 42, 3.5, 6, 26, 6], MEMORY, MEMORY),
  shape('bulb-tee-63', 'PCI bulb-tee BT-63', [63, 42, 3.5, 6, 26, 6], MEMORY, MEMORY),
  shape('bulb-tee-72', 'PCI bulb-tee BT-72', [72, 42, 3.5, 6, 26, 6], MEMORY, MEMORY),
]

const steel: SectionShape = {
  id: 'plate-girder',
  name: 'Steel plate girder, 1.5 m',
  material: 'steel',
  section: {
    topWidth: 0.4,
    topThickness: 0.03,
    webThickness: 0.014,
    bottomWidth: 0.45,
    bottomThickness: 0.04,
    depth: 1.5,
  },
  sources: { depth: EXAMPLE, others: EXAMPLE },
}

export const sectionShapes: readonly SectionShape[] = [...concrete, steel]
