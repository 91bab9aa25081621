/** Shapes that the study made for pictures, and which line is looked at. Nothing is computed here. */
import type { Skin } from '../geometry/room/skin/skin'
import type { Girder, Vec3 } from '../plan/types'
import { once } from '../state/derived'
import { type AppState, useApp } from '../state/store'
import type { LineDetail } from '../study/details'
import type { ObstacleResult, Results } from '../study/results'
import type { ShotSource } from './camera/shots'
import { readTriangles } from './models'

const detailsIn = (s: AppState): LineDetail[] => s.study.details

const focusIn = (s: AppState): string | null => s.tapeLine ?? s.plan.lines[0]?.id ?? null

/** By line; empty until something was computed. */
export const useLineDetails = (): LineDetail[] => useApp(detailsIn)

/** The line on the tape, or the plan's first. */
export const useFocusLine = (): string | null => useApp(focusIn)

export const useFocusDetail = (): LineDetail | null =>
  useApp((s) => detailsIn(s).find((d) => d.id === focusIn(s)) ?? null)

/** Whether a room enters it. */
export const useClash = (id: string): boolean => useApp((s) => clashIds(s.study.results).includes(id))

const clashIds = once((results: Results | null): string[] =>
  (results?.obstacles ?? []).filter((o) => o.gap !== null && o.gap < 0).map((o) => o.id),
)

/** Ids of obstacles and girders that a room enters. */
export const useClashIds = (): string[] => useApp((s) => clashIds(s.study.results))

/** A gap may also tell where something that travels has its centre at the worst. */
type Told = ObstacleResult & { centre?: Vec3 }

const worstPlaces = once(
  (results: Results | null): ReadonlyMap<string, Vec3> =>
    new Map(((results?.obstacles ?? []) as Told[]).flatMap((o) => (o.centre ? [[o.id, o.centre]] : []))),
)

/** Where travelling boxes stand when their room is least. */
export const useWorstPlaces = (): ReadonlyMap<string, Vec3> => useApp((s) => worstPlaces(s.study.results))

/** The same for one; null where it is not known or does not travel. */
export const useWorstPlace = (id: string): Vec3 | null =>
  useApp((s) => worstPlaces(s.study.results).get(id) ?? null)

export const shotSource = (s: AppState): ShotSource => ({
  plan: s.plan,
  line: focusIn(s),
  results: s.study.results,
  details: detailsIn(s),
  hidden: s.hidden,
  places: worstPlaces(s.study.results),
  model: readTriangles,
})

/** The rooms that the study made; empty until something was computed. */
export const useRooms = (): Skin[] => useApp((s) => s.study.skins)

/** The girder that a line stands on. */
export const useLineGirder = (line: string | null): Girder | undefined =>
  useApp((s) => {
    const on = s.plan.lines.find((l) => l.id === line)?.girder
    return s.plan.girders.find((g) => g.id === on)
  })
