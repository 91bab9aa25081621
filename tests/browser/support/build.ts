import { buildIfStale } from '../../../scripts/lib/build.mjs'

/** The tests see what a person would get: the built window. */
export default async function buildFirst(): Promise<void> {
  await buildIfStale()
}
