/**
 * One rope span in CalculiX (a general finite-element program, Debian package calculix-ccx): T3D2 elements along the
 * chord, large displacements, the rope's slack or pretension as a change of temperature, self-weight and a point load.
 * Its Green-strain law differs from a rope's engineering strain by about half the strain, 0.2 to 0.4 % here.
 */
import { execFileSync, spawnSync } from 'node:child_process'
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'

export const hasCalculix = (): boolean => spawnSync('ccx', ['-v']).error === undefined

export interface RopeSpan {
  /** Horizontal distance and rise between the ends, m. */
  X: number
  Z: number
  EA: number
  /** N/m */
  w: number
  /** Unstretched length, m. */
  rope: number
  /** Point load, N, at the node nearest this share of the rope. */
  P: number
  share: number
}

export interface SpanAnswer {
  /** Tension at both ends, N. */
  first: number
  last: number
  /** Where the loaded node has come to, from the first end, m. */
  x: number
  z: number
}

export const ELEMENTS = 40
const AREA = 4e-5
const GRAVITY = 9.80665

function deck(s: RopeSpan): { text: string; loaded: number } {
  const chord = Math.hypot(s.X, s.Z)
  const nodes = Array.from({ length: ELEMENTS + 1 }, (_, i) => {
    const t = i / ELEMENTS
    return `${i + 1}, ${s.X * t}, 0, ${s.Z * t}`
  })
  const elements = Array.from({ length: ELEMENTS }, (_, i) => `${i + 1}, ${i + 1}, ${i + 2}`)
  const loaded = 1 + Math.round(s.share * ELEMENTS)
  const change = (s.rope / chord - 1) / 1e-5
  // The mass is spread over the chord's elements, so the density is that of the unstretched rope on the chord.
  const density = ((s.w / GRAVITY) * s.rope) / (chord * AREA)
  const text = `*NODE, NSET=ALL
${nodes.join('\n')}
*ELEMENT, TYPE=T3D2, ELSET=ROPE
${elements.join('\n')}
*MATERIAL, NAME=WIRE
*ELASTIC
${s.EA / AREA}, 0
*EXPANSION
1e-5
*DENSITY
${density}
*SOLID SECTION, ELSET=ROPE, MATERIAL=WIRE
${AREA}
*BOUNDARY
ALL, 2, 2
1, 1, 3
${ELEMENTS + 1}, 1, 3
*NSET, NSET=ENDS
1, ${ELEMENTS + 1}
*NSET, NSET=LOADED
${loaded}
*INITIAL CONDITIONS, TYPE=TEMPERATURE
ALL, 0
*STEP, NLGEOM, INC=1000
*STATIC
0.1, 1, 1e-8, 1
*TEMPERATURE
ALL, ${change}
*DLOAD
ROPE, GRAV, ${GRAVITY}, 0, 0, -1
*END STEP
*STEP, NLGEOM, INC=1000
*STATIC
0.1, 1, 1e-8, 0.5
*TEMPERATURE
ALL, ${change}
*CLOAD
${loaded}, 3, ${-s.P}
*NODE PRINT, NSET=LOADED, FREQUENCY=1000
U
*NODE PRINT, NSET=ENDS, FREQUENCY=1000
RF
*END STEP
`
  return { text, loaded }
}

/** The last block of three numbers a node under a heading of CalculiX' printed output. */
function lastBlock(dat: string, heading: string): Map<number, [number, number, number]> {
  const at = dat.lastIndexOf(heading)
  const rows = new Map<number, [number, number, number]>()
  for (const line of dat.slice(at).split('\n').slice(1)) {
    const v = line.trim().split(/\s+/).map(Number)
    if (v.length === 4 && v.every(Number.isFinite)) rows.set(v[0]!, [v[1]!, v[2]!, v[3]!])
    else if (rows.size > 0) break
  }
  return rows
}

/** Runs CalculiX on one span; throws with its output where it does not converge. */
export function solveSpan(s: RopeSpan): SpanAnswer {
  const folder = mkdtempSync(join(tmpdir(), 'rope-span-'))
  try {
    const { text, loaded } = deck(s)
    writeFileSync(join(folder, 'span.inp'), text)
    const out = execFileSync('ccx', ['-i', 'span'], {
      cwd: folder,
      env: { ...process.env, OMP_NUM_THREADS: '1' },
    })
    const dat = readFileSync(join(folder, 'span.dat'), 'utf8')
    const u = lastBlock(dat, 'displacements').get(loaded)
    const rf = lastBlock(dat, 'forces')
    const a = rf.get(1)
    const b = rf.get(ELEMENTS + 1)
    if (!u || !a || !b) throw new Error(out.toString().slice(-800))
    const t = (loaded - 1) / ELEMENTS
    return { first: Math.hypot(...a), last: Math.hypot(...b), x: s.X * t + u[0], z: s.Z * t + u[2] }
  } finally {
    rmSync(folder, { recursive: true, force: true })
  }
}
