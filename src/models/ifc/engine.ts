/** The IFC engine (web-ifc, WebAssembly that lies beside the program): started once, one file open at a time. */
import { IfcAPI, LogLevel } from 'web-ifc'
import { damaged } from '../types'

let started: Promise<IfcAPI> | null = null

/** Starts the engine; `address` is where web-ifc.wasm lies in a window, nothing in Node. */
function ifcEngine(address?: string): Promise<IfcAPI> {
  started ??= start(address).catch((error: unknown) => {
    started = null
    throw error
  })
  return started
}

async function start(address?: string): Promise<IfcAPI> {
  const api = new IfcAPI()
  await api.Init(address ? () => address : undefined, true)
  api.SetLogLevel(LogLevel.LOG_LEVEL_OFF)
  return api
}

/** Larger files are refused: the engine needs many times their size in memory. */
const MOST_IFC_BYTES = 256 * 1024 * 1024

/** Runs `use` on an open model and closes it whatever happens. */
export async function withIfc<T>(
  bytes: Uint8Array,
  address: string | undefined,
  use: (api: IfcAPI, model: number) => T,
): Promise<{ ok: true; value: T } | { ok: false; why: string }> {
  const refusal = ifcRefusal(bytes)
  if (refusal) return { ok: false, why: refusal }
  let api: IfcAPI
  try {
    api = await ifcEngine(address)
  } catch {
    return { ok: false, why: 'the IFC reader could not be started here' }
  }
  let model = -1
  try {
    model = api.OpenModel(bytes)
    if (model < 0)
      return { ok: false, why: 'the IFC file could not be opened: it is damaged or of a schema not known' }
    return { ok: true, value: use(api, model) }
  } catch (error) {
    return { ok: false, why: `the IFC file ${damaged(error)}` }
  } finally {
    if (model >= 0) api.CloseModel(model)
  }
}

function ifcRefusal(bytes: Uint8Array): string | null {
  if (bytes.length > MOST_IFC_BYTES) {
    const size = Math.round(bytes.length / 1024 / 1024)
    return `the IFC file has ${size} MB, more than the 256 MB that can be read: save only what lies near the lines`
  }
  const head = new TextDecoder().decode(bytes.subarray(0, 200))
  if (!head.includes('ISO-10303-21')) return 'the file is no IFC: it does not begin like one'
  const tail = new TextDecoder().decode(bytes.subarray(-400))
  return tail.includes('END-ISO-10303-21') ? null : 'the IFC file is cut short: its last line is missing'
}
