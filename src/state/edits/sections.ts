/**
 * Generic girder sections to start from, metres. The concrete ones have the published depths and flange widths of the
 * AASHTO I-girder types II to VI (inches below); their webs and flange plates are simplified to one thickness each and
 * are to be replaced by the drawing's. The steel ones are plain round figures.
 */
import type { GirderSection } from '../../plan/types'

export interface NamedSection {
  id: string
  name: string
  material: 'concrete' | 'steel'
  section: GirderSection
}

const inch = 0.0254
const mm = (m: number): number => Math.round(m * 1000) / 1000

function concrete(
  id: string,
  name: string,
  depth: number,
  top: number,
  bottom: number,
  web: number,
): NamedSection {
  const plates = { topThickness: mm(depth * 0.14 * inch), bottomThickness: mm(depth * 0.16 * inch) }
  const widths = { topWidth: mm(top * inch), bottomWidth: mm(bottom * inch), webThickness: mm(web * inch) }
  return { id, name, material: 'concrete', section: { ...widths, ...plates, depth: mm(depth * inch) } }
}

function steel(id: string, name: string, depth: number, flange: number): NamedSection {
  const section = {
    topWidth: flange,
    topThickness: 0.03,
    webThickness: 0.014,
    bottomWidth: flange,
    bottomThickness: 0.035,
    depth,
  }
  return { id, name, material: 'steel', section }
}

export const sections: NamedSection[] = [
  concrete('type-2', 'I-girder type II, 36 in', 36, 12, 18, 6),
  concrete('type-3', 'I-girder type III, 45 in', 45, 16, 22, 7),
  concrete('type-4', 'I-girder type IV, 54 in', 54, 20, 26, 8),
  concrete('type-5', 'I-girder type V, 63 in', 63, 42, 28, 8),
  concrete('type-6', 'I-girder type VI, 72 in', 72, 42, 28, 8),
  steel('plate-1200', 'Plate girder, 1.2 m', 1.2, 0.4),
  steel('plate-1800', 'Plate girder, 1.8 m', 1.8, 0.5),
  steel('plate-2400', 'Plate girder, 2.4 m', 2.4, 0.6),
]
