/** Hears a worker's progress only while its work is under way. */
import * as Comlink from 'comlink'

/**
 * Does work in a worker that tells how far it is. The telling comes over a channel of its own, so the last of it may arrive
 * after the result: from then on nothing is told, or work that is done would look as if it went on.
 * @param told what hears the progress, on this side.
 * @param work gives the worker what it is asked, and the hearing end to tell.
 */
export async function tellingUntilDone<A extends unknown[], R>(
  told: (...progress: A) => void,
  work: (told: (...progress: A) => void) => PromiseLike<R>,
): Promise<R> {
  let underWay = true
  const hear = (...progress: A): void => {
    if (underWay) told(...progress)
  }
  try {
    return await work(Comlink.proxy(hear))
  } finally {
    underWay = false
  }
}
