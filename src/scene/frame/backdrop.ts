/**
 * The part of the picture that stands still, kept as it was drawn, with its depths: colours and depths of the canvas are
 * copied away and laid back without drawing anything again. Needs a canvas without smoothing of its own.
 */
export interface Backdrop {
  /** Copies the canvas as it is now; false where this machine can't. */
  keep(): boolean
  /** Lays the copy back onto the canvas. */
  show(): void
  dispose(): void
}

type Context = WebGL2RenderingContext

export function makeBackdrop(gl: Context): Backdrop {
  let copy: Copy | null = null
  return {
    keep: () => {
      const [width, height] = [gl.drawingBufferWidth, gl.drawingBufferHeight]
      if (copy?.width !== width || copy.height !== height) {
        copy?.dispose()
        copy = makeCopy(gl, width, height)
      }
      while (gl.getError() !== gl.NO_ERROR);
      blit(gl, null, copy.buffer, width, height)
      return gl.getError() === gl.NO_ERROR
    },
    show: () => {
      if (!copy) return
      // A canvas that has gone to the page is wiped before it is drawn on again, but not before it is copied to.
      gl.clear(gl.COLOR_BUFFER_BIT)
      blit(gl, copy.buffer, null, copy.width, copy.height)
    },
    dispose: () => copy?.dispose(),
  }
}

interface Copy {
  width: number
  height: number
  buffer: WebGLFramebuffer
  dispose(): void
}

function makeCopy(gl: Context, width: number, height: number): Copy {
  const buffer = gl.createFramebuffer()
  const stores = [gl.createRenderbuffer(), gl.createRenderbuffer()] as const
  // Depths are copied only between buffers of one kind: this is the one that browsers give a canvas.
  const places = [
    [gl.RGB8, gl.COLOR_ATTACHMENT0],
    [gl.DEPTH24_STENCIL8, gl.DEPTH_STENCIL_ATTACHMENT],
  ] as const
  gl.bindFramebuffer(gl.FRAMEBUFFER, buffer)
  stores.forEach((store, i) => {
    const [format, place] = places[i]!
    gl.bindRenderbuffer(gl.RENDERBUFFER, store)
    gl.renderbufferStorage(gl.RENDERBUFFER, format, width, height)
    gl.framebufferRenderbuffer(gl.FRAMEBUFFER, place, gl.RENDERBUFFER, store)
  })
  gl.bindRenderbuffer(gl.RENDERBUFFER, null)
  gl.bindFramebuffer(gl.FRAMEBUFFER, null)
  const dispose = (): void => {
    gl.deleteFramebuffer(buffer)
    for (const store of stores) gl.deleteRenderbuffer(store)
  }
  return { width, height, buffer, dispose }
}

type Side = WebGLFramebuffer | null

/** Leaves the canvas bound, as who draws next believes it to be. */
function blit(gl: Context, from: Side, to: Side, width: number, height: number): void {
  gl.bindFramebuffer(gl.READ_FRAMEBUFFER, from)
  gl.bindFramebuffer(gl.DRAW_FRAMEBUFFER, to)
  const what = gl.COLOR_BUFFER_BIT | gl.DEPTH_BUFFER_BIT
  gl.blitFramebuffer(0, 0, width, height, 0, 0, width, height, what, gl.NEAREST)
  gl.bindFramebuffer(gl.FRAMEBUFFER, null)
}
