/** What can draw here: nothing, the processor alone, or a graphics processor. */
export type Drawing = 'none' | 'software' | 'hardware'

/** Names that renderers without a graphics processor give themselves. */
const SOFTWARE = /swiftshader|llvmpipe|softpipe|software|basic render/i

/** Asks with a canvas of its own, which is given back at once. */
export function findDrawing(make: () => HTMLCanvasElement = () => document.createElement('canvas')): Drawing {
  try {
    const gl = make().getContext('webgl2')
    if (!gl) return 'none'
    const info = gl.getExtension('WEBGL_debug_renderer_info')
    const name = String(gl.getParameter(info ? info.UNMASKED_RENDERER_WEBGL : gl.RENDERER))
    gl.getExtension('WEBGL_lose_context')?.loseContext()
    return SOFTWARE.test(name) ? 'software' : 'hardware'
  } catch {
    return 'none'
  }
}
