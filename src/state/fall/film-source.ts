/** The scene's canvas, drawn anew at this instant: a picture of it is whole only in the same turn. Null while it is not shown. */
export const filmed: { draw: (() => HTMLCanvasElement) | null } = { draw: null }
