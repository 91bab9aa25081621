/** Which parts are used: the one place that knows where a plan refers to a part. */
import type { Line, PartKind, Worker } from './types'

/** Lines, and workers, with what they refer to. */
interface Users {
  lines: readonly Line[]
  workers: readonly Worker[]
}

/** Ids that refer to parts of each kind. A study is kept, a part let go and a line copied by these: no kind may lack. */
const references: Record<PartKind, (users: Users) => (string | null)[]> = {
  'wire-rope': ({ lines }) => lines.map((l) => l.wireRope),
  'line-absorber': ({ lines }) => lines.map((l) => l.absorber),
  connector: ({ workers }) => workers.map((w) => w.connector),
  stanchion: ({ lines }) => lines.flatMap((l) => l.stanchions.map((s) => s.part)),
  bracket: ({ lines }) => lines.flatMap((l) => l.stanchions.map((s) => s.bracket)),
  'tie-back': ({ lines }) => lines.flatMap((l) => l.tieBacks.map((t) => t.part)),
  hardware: ({ lines }) => lines.flatMap((l) => l.hardware),
}

/** Ids of every part that these lines and workers use; workers count whether or not their line is among the lines. */
export function partIdsOf(users: Users): Set<string> {
  const ids = Object.values(references).flatMap((of) => of(users))
  return new Set(ids.filter((id) => id !== null))
}
