import { z } from 'zod'

/** What the window may send, verb by verb. Anything else is refused before it reaches a file. */
const id = z.string().max(200).nullable()
const name = z.string().min(1).max(255)
const text = z.string()
const bytes = z.instanceof(Uint8Array)

export const payloads = {
  none: z.object({}).strict(),
  openPath: z.object({ path: z.string().min(1).max(4096) }).strict(),
  openRecent: z.object({ id: z.string().max(200) }).strict(),
  save: z.object({ id, text, overwrite: z.boolean() }).strict(),
  saveAs: z.object({ text, name, from: id }).strict(),
  statFile: z.object({ id: z.string().max(200) }).strict(),
  exportFile: z.object({ name, bytes }).strict(),
  pickFile: z.object({ kind: z.enum(['mesh', 'table', 'photo', 'any']) }).strict(),
  readMesh: z.object({ id, file: z.string().max(1024) }).strict(),
  keepMesh: z.object({ id, name, bytes }).strict(),
  keepMeshQuery: z.object({ id, name }).strict(),
  journalWrite: z.object({ id, name, text }).strict(),
  journalClear: z.object({ id }).strict(),
  journalDrop: z.object({ entry: z.string().max(200) }).strict(),
  remember: z.object({ key: z.string().min(1).max(60), value: z.string().max(1_000_000) }).strict(),
  setDocument: z.object({ title: z.string().max(500), unsaved: z.boolean() }).strict(),
  setMenu: z
    .object({
      groups: z
        .array(
          z.object({
            label: z.string().max(80),
            items: z
              .array(
                z.object({
                  id: z.string().max(120),
                  label: z.string().max(120),
                  shortcut: z.string().max(40).optional(),
                  enabled: z.boolean(),
                }),
              )
              .max(200),
          }),
        )
        .max(20),
    })
    .strict(),
}

/** The fault that a payload has, as one line for the log and the refusal. */
export function payloadFault(error: z.ZodError): string {
  const issue = error.issues[0]
  return `The request was not understood: ${issue?.path.join('.') || 'payload'} ${issue?.message ?? ''}`.trim()
}
