/**
 * The first picture comes before the first figures: on two cores the study and the drawing of the site would wait for
 * each other. Whoever draws says when it stands; where nothing can be drawn, or too late, the study starts without it.
 */

/** The study waits no longer than this for a picture, ms. */
const MOST = 4000

let stands = (): void => undefined

/** Resolves when the first picture stands, or will not come. */
export const firstPicture: Promise<void> = new Promise((resolve) => {
  stands = resolve
})

/** Told by the scene once it drew, or found that it can't. */
export function pictureStands(): void {
  stands()
}

/** From now on the picture has `MOST` ms to come. */
export function awaitPicture(): void {
  setTimeout(stands, MOST)
}
