import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { elevation } from '../../../src/drawings/elevation'
import { forceTriangle } from '../../../src/drawings/force-triangle'
import { LabelSpace, overlaps } from '../../../src/drawings/labels'
import type { Mark } from '../../../src/drawings/marks'
import { hatchLines, picture } from '../../../src/drawings/picture'
import { clipPolygon, planView } from '../../../src/drawings/plan-view'
import { plot } from '../../../src/drawings/plot'
import { crossSection, sectionOutline } from '../../../src/drawings/section'
import { labelHeights, stack, stackParts } from '../../../src/drawings/stack'
import { type SvgElement, svgText } from '../../../src/drawings/svg'
import { tape } from '../../../src/drawings/tape'
import { textWidth } from '../../../src/drawings/text-size'
import { paperTheme, screenTheme } from '../../../src/drawings/theme'
import { type Point, pointsPerMetre, scaledView, toModel, toPicture } from '../../../src/drawings/view'
import type { Vec3 } from '../../../src/plan/types'
import { fixtureDetail, fixturePlan, fixtureResults } from './fixture'

const SEED = 20260314

function inputOf(stanchions = 3) {
  const plan = fixturePlan({ stanchions })
  const rope = fixtureDetail(plan)
  return { plan, line: plan.lines[0]!, results: fixtureResults(plan), rope, units: 'us' as const }
}

const all = (node: SvgElement): SvgElement[] => [
  node,
  ...node.children.flatMap((c) => (typeof c === 'string' ? [] : all(c))),
]

const refs = (node: SvgElement): Set<string> =>
  new Set(all(node).flatMap((n) => (n.attributes['data-ref'] ? [String(n.attributes['data-ref'])] : [])))

/** Boxes of all texts as the browser would draw them, by the same sum of widths. */
function textBoxes(node: SvgElement) {
  return all(node)
    .filter((n) => n.tag === 'text')
    .map((n) => {
      const text = n.children.join('')
      const size = Number(n.attributes['font-size'])
      const width = textWidth(text, size, n.attributes['font-weight'] === 'bold')
      const anchor = n.attributes['text-anchor']
      const x = Number(n.attributes.x) - (anchor === 'middle' ? width / 2 : anchor === 'end' ? width : 0)
      const y = Number(n.attributes.y)
      return { text, left: x, right: x + width, top: y - size * 0.85, bottom: y + size * 0.25 }
    })
}

function overlapping(node: SvgElement): string[] {
  const boxes = textBoxes(node)
  return boxes.flatMap((a, i) =>
    boxes.slice(i + 1).flatMap((b) => (overlaps(a, b) ? [`${a.text} / ${b.text}`] : [])),
  )
}

/** The shed stands just where the room is deepest. */
function enteredAtDeepest() {
  const input = inputOf()
  const floor = input.results.lines[0]!.floor
  const deepest = floor.reduce((a, b) => ((a.depth ?? 0) >= (b.depth ?? 0) ? a : b)).station
  const rename = (name: string) => input.plan.obstacles.map((o) => (o.id === 'O-shed' ? { ...o, name } : o))
  const obstacles = input.results.obstacles.map((o) =>
    o.id === 'O-shed' ? { ...o, gap: -1.57, station: deepest } : o,
  )
  return {
    ...input,
    plan: { ...input.plan, obstacles: rename('Haul road') },
    results: { ...input.results, obstacles },
  }
}

/** Texts that lie under the plate of another. */
function underPlates(node: SvgElement): string[] {
  const plates = all(node)
    .filter((n) => n.tag === 'rect' && n.attributes.rx !== undefined)
    .map((n) => {
      const [x, y, width, height] = ['x', 'y', 'width', 'height'].map((k) => Number(n.attributes[k]))
      return { left: x!, top: y!, right: x! + width!, bottom: y! + height! }
    })
  return textBoxes(node).flatMap((text) => {
    const on = plates.filter((p) => overlaps(p, text))
    const own = on.some((p) => p.left <= text.left && p.right >= text.right && p.top <= text.top)
    return on.length > (own ? 1 : 0) ? [text.text] : []
  })
}

describe('the tape', () => {
  it('carries a reference for everything that can be grabbed', () => {
    const { picture: drawn } = tape(inputOf(), { width: 1200, height: 200 })
    const found = refs(drawn)
    for (const ref of [
      'stanchion:S1',
      'tie-back:T1',
      'tie-back:T1:strap',
      'line:L1',
      'room:L1',
      'obstacle:O-shed',
      'loop:A:4',
    ]) {
      expect(found, ref).toContain(ref)
    }
  })

  it('puts a stanchion where its station is, in any window', () => {
    for (const stations of [undefined, { low: 1, high: 9 }, { low: -3, high: 30 }]) {
      const made = tape(inputOf(), { width: 900, height: 180, ...(stations ? { stations } : {}) })
      const shaft = all(made.picture).find(
        (n) => n.tag === 'path' && n.attributes['data-ref'] === 'stanchion:S2',
      )
      const x = Number(/^M([-\d.]+)/.exec(String(shaft?.attributes.d ?? ''))?.[1])
      if (stations?.high === 9) expect(toModel(made.view, [x, 0])[0]).toBeCloseTo(8.15, 3)
      else expect(toModel(made.view, [x, 0])[0]).toBeCloseTo(8.15, 2)
    }
  })

  it('says the clash with its depth and cuts it out', () => {
    const made = tape(inputOf(), { width: 1200, height: 200 })
    expect(svgText(made.picture)).toContain('4 ft 1 1/4 in into Site shed')
    expect(made.marks.some((m) => m.layer === 'CLASHES' && m.kind === 'path' && m.closed)).toBe(true)
  })

  it.each([
    ['under this one too', 0, true],
    ['far to its side', 40, false],
  ])('tells no depth of another line’s clash, %s: what may be hit is cut out', (_, aside, cut) => {
    const input = inputOf()
    const obstacles = input.plan.obstacles.map((o) =>
      o.kind === 'box' ? { ...o, center: [o.center[0], o.center[1] + aside, o.center[2]] as Vec3 } : o,
    )
    const worst = input.results!.obstacles.map((o) => ({ ...o, line: 'L2' }))
    const results = { ...input.results!, obstacles: worst }
    for (const drawn of [tape, elevation]) {
      const made = drawn(
        { ...input, plan: { ...input.plan, obstacles }, results },
        { width: 1200, height: 300 },
      )!
      expect(svgText(made.picture)).not.toContain('into Site shed')
      expect(svgText(made.picture)).not.toContain('under the room')
      expect(made.marks.some((m) => m.layer === 'CLASHES')).toBe(cut)
    }
  })

  it.each([0, 1, 2, 12, 40])('never lays text on text with %i stanchions', (count) => {
    for (const [width, height] of [
      [360, 120],
      [900, 180],
      [1600, 240],
    ] as const) {
      const made = tape(inputOf(count), { width, height })
      expect(overlapping(made.picture)).toEqual([])
      expect(underPlates(made.picture)).toEqual([])
      expect(svgText(made.picture)).not.toMatch(/NaN|Infinity|undefined/)
    }
  })

  it('writes the depth of the room beside what it enters, not under it', () => {
    for (const view of [
      { width: 400, height: 120 },
      { width: 1240, height: 160 },
      { width: 1240, height: 200 },
    ]) {
      const drawn = tape(enteredAtDeepest(), view).picture
      expect(textBoxes(drawn).map((b) => b.text)).toContain('5 ft 1 3/4 in into Haul road')
      expect(overlapping(drawn)).toEqual([])
      expect(underPlates(drawn)).toEqual([])
    }
  })

  it('shows a line whose girder is not there as nothing, and does not throw', () => {
    const input = inputOf()
    const made = tape({ ...input, line: { ...input.line, girder: 'gone' } }, { width: 300, height: 100 })
    expect(all(made.picture).filter((n) => n.tag === 'path')).toEqual([])
  })
})

describe('drawings to scale', () => {
  it('draws one metre as 1/n of a metre on paper', () => {
    const made = elevation(inputOf(), { width: 520, height: 300 })!
    const [a, b] = [toPicture(made.view, [0, 0]), toPicture(made.view, [1, 0])]
    // 72 points to the inch of 25.4 mm.
    expect(b[0] - a[0]).toBeCloseTo((1000 / made.scale! / 25.4) * 72, 6)
    expect(made.view.width).toBeLessThanOrEqual(520)
    expect(pointsPerMetre(100)).toBeCloseTo(28.3465, 4)
  })

  it('keeps to a scale that was asked for', () => {
    expect(elevation(inputOf(), { width: 100, height: 100, scale: 50 })!.scale).toBe(50)
  })

  it.each([1, 2, 3, 40])(
    'draws elevation, plan and section of %i stanchions without text on text',
    (count) => {
      const input = inputOf(count)
      const underside = [-1, -0.5, 0, 0.5, 1].map((x): Point => [x, -4 + 0.2 * x * x])
      const section = { plan: input.plan, girder: 'G1', station: 5, underside, units: 'us' as const }
      const made = [
        elevation(input, { width: 520, height: 300 }),
        planView(input, { width: 520, height: 240 }),
        crossSection(section, { width: 400, height: 300 }),
      ]
      for (const d of made) {
        expect(d).not.toBeNull()
        expect(overlapping(d!.picture)).toEqual([])
        expect(svgText(d!.picture)).not.toMatch(/NaN|Infinity|undefined/)
      }
    },
  )

  it('has nothing to draw of a line without stanchions', () => {
    expect(elevation(inputOf(0), { width: 500, height: 300 })).toBeNull()
    expect(planView(inputOf(0), { width: 500, height: 300 })).toBeNull()
  })

  it('has a section outline as wide, deep and heavy as the figures say', () => {
    const s = {
      topWidth: 1,
      topThickness: 0.2,
      webThickness: 0.1,
      bottomWidth: 0.6,
      bottomThickness: 0.3,
      depth: 2,
    }
    const area = shoelace(sectionOutline(s))
    expect(Math.abs(area)).toBeCloseTo(1 * 0.2 + 0.1 * 1.5 + 0.6 * 0.3, 9)
  })
})

const shoelace = (p: Point[]): number =>
  p.reduce((sum, [x, y], i) => {
    const [u, v] = p[(i + 1) % p.length]!
    return sum + (x * v - u * y) / 2
  }, 0)

describe('the stack', () => {
  const input = {
    freeFall: 1.6,
    lineDrop: 1.5,
    connectorExtension: 0.3,
    harnessStretch: 0.3,
    marginBelow: 0.6,
    excess: 0,
    there: { name: 'Creek', distance: 3.9 },
    units: 'si' as const,
  }

  it('adds up to the clearance, with bars to one scale', () => {
    expect(stackParts(input).reduce((s, p) => s + p.length, 0)).toBeCloseTo(4.3, 9)
    const rects = all(stack(input, 260, 240)).filter((n) => n.tag === 'rect')
    const heights = rects.map((r) => Number(r.attributes.height))
    expect(heights[0]! / heights[1]!).toBeCloseTo(1.6 / 1.5, 2)
    expect(heights.at(-1)! / heights[0]!).toBeCloseTo(3.9 / 1.6, 2)
  })

  it('pushes the labels of thin parts apart', () => {
    const bar = { x: 0, width: 10, scale: 10, top: 0 }
    const thin = Array.from({ length: 5 }, () => ({ name: '', length: 0.1, hatch: false }))
    const at = labelHeights([...thin, { name: '', length: 10, hatch: false }], bar, 12)
    for (let i = 1; i < at.length; i++) expect(at[i]! - at[i - 1]!).toBeGreaterThanOrEqual(12 - 1e-9)
  })
})

describe('plots', () => {
  it('breaks a line where a value is not known', () => {
    const points: Point[] = [
      [0, 1],
      [1, 2],
      [2, Number.NaN],
      [3, 2],
      [4, 1],
    ]
    const made = plot(
      { x: { label: 'Time', unit: 's' }, y: { label: 'Force', unit: 'kN' }, lines: [{ name: 'a', points }] },
      400,
      240,
    )
    const text = svgText(made.picture)
    expect(text).not.toContain('NaN')
    expect(text).toContain('Time, s')
    const back = made.at([200, 100])
    expect(back.every(Number.isFinite)).toBe(true)
  })

  it('stands without any value', () => {
    const made = plot(
      { x: { label: 'x', unit: 'm' }, y: { label: 'y', unit: 'm' }, lines: [] },
      300,
      200,
      paperTheme,
    )
    expect(svgText(made.picture)).not.toMatch(/NaN|Infinity/)
  })

  it('draws forces to one scale', () => {
    const made = forceTriangle(
      [
        { text: 'a', force: [1000, 0] },
        { text: 'b', force: [0, -500] },
      ],
      300,
      300,
    )
    const shafts = all(made).filter((n) => n.tag === 'path' && n.attributes.fill === 'none')
    const lengths = shafts.map((n) => {
      const [x1, y1, x2, y2] = String(n.attributes.d)
        .match(/-?[\d.]+/g)!
        .map(Number)
      return Math.hypot(x2! - x1!, y2! - y1!)
    })
    expect(lengths[0]! / lengths[1]!).toBeCloseTo(2, 3)
  })
})

describe('marks to pictures', () => {
  it(`never lays a text that may dodge on another (seed ${SEED})`, () => {
    const label = fc.record({
      x: fc.double({ min: 0, max: 10, noNaN: true }),
      y: fc.double({ min: 0, max: 4, noNaN: true }),
      text: fc.string({ minLength: 1, maxLength: 14 }),
    })
    fc.assert(
      fc.property(fc.array(label, { maxLength: 25 }), (labels) => {
        const marks = labels.map(
          (l): Mark => ({
            kind: 'text',
            layer: 'TEXT',
            at: [l.x, l.y],
            text: l.text,
            dodge: 'up',
            optional: true,
          }),
        )
        const view = { width: 800, height: 300, scaleX: 80, scaleY: 70, left: 0, top: 4.2 }
        expect(overlapping(picture(marks, view, screenTheme))).toEqual([])
      }),
      { seed: SEED, numRuns: 60 },
    )
  })

  it('keeps what must be read inside the picture', () => {
    const space = new LabelSpace(100, 40)
    const placed = space.place({
      at: [98, 2],
      text: 'loop 12',
      size: 10,
      bold: false,
      anchor: 'start',
      optional: false,
    })!
    expect(placed.box.right).toBeLessThanOrEqual(100)
    expect(placed.box.top).toBeGreaterThanOrEqual(0)
  })

  it('writes names with any characters as sound XML', () => {
    const marks: Mark[] = [{ kind: 'text', layer: 'TEXT', at: [0, 0], text: '<b> & "x" \u0000\ud800 Ω 橋' }]
    const view = { width: 200, height: 50, scaleX: 1, scaleY: 1, left: -50, top: 20 }
    expect(svgText(picture(marks, view, screenTheme))).toContain('&lt;b&gt; &amp; &quot;x&quot;  Ω 橋')
  })

  it(`hatches only inside (seed ${SEED})`, () => {
    const square: Point[] = [
      [0, 0],
      [10, 0],
      [10, 6],
      [0, 6],
    ]
    for (const [a, b] of hatchLines(square, 1)) {
      for (const [x, y] of [a, b]) {
        expect(x).toBeGreaterThanOrEqual(-1e-9)
        expect(x).toBeLessThanOrEqual(10 + 1e-9)
        expect(y).toBeGreaterThanOrEqual(-1e-9)
        expect(y).toBeLessThanOrEqual(6 + 1e-9)
      }
    }
  })

  it(`cuts polygons to the window: never outside, never larger (seed ${SEED})`, () => {
    const coordinate = fc.double({ min: -20, max: 20, noNaN: true })
    fc.assert(
      fc.property(fc.array(fc.tuple(coordinate, coordinate), { minLength: 3, maxLength: 4 }), (points) => {
        const cut = clipPolygon(points, { low: -5, high: 5 }, { low: -3, high: 3 })
        for (const [x, y] of cut) {
          expect(Math.abs(x)).toBeLessThanOrEqual(5 + 1e-6)
          expect(Math.abs(y)).toBeLessThanOrEqual(3 + 1e-6)
        }
      }),
      { seed: SEED, numRuns: 200 },
    )
  })

  it('has the scale that its view says', () => {
    const view = scaledView(
      100,
      { low: 0, high: 10 },
      { low: 0, high: 5 },
      { left: 5, right: 5, top: 5, bottom: 5 },
    )
    expect(toModel(view, toPicture(view, [3, 2]))).toEqual([expect.closeTo(3, 9), expect.closeTo(2, 9)])
  })
})
