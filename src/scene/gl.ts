/** Makes what draws the picture, and tells whether a graphics processor does it. */
import { WebGLRenderer, type WebGLRendererParameters } from 'three'

/** Names that renderers without a graphics processor give themselves. */
const SOFTWARE = /swiftshader|llvmpipe|softpipe|software|basic render/i

/** Whether the processor alone draws, by the name that the renderer gives itself. */
export function isSoftware(
  gl: Pick<WebGL2RenderingContext, 'getExtension' | 'getParameter' | 'RENDERER'>,
): boolean {
  const info = gl.getExtension('WEBGL_debug_renderer_info')
  return SOFTWARE.test(String(gl.getParameter(info ? info.UNMASKED_RENDERER_WEBGL : gl.RENDERER)))
}

/**
 * A renderer on a canvas; throws in plain words where there is none to be had. Lines are smoothed by drawing at more
 * pixels than there are rather than by the context's own smoothing, which can't be switched off while things move.
 */
export function makeRenderer(options: WebGLRendererParameters): WebGLRenderer {
  const wanted = { ...options, antialias: false, alpha: false } as const
  const canvas = options.canvas as HTMLCanvasElement
  const context = canvas.getContext('webgl2', {
    antialias: false,
    alpha: false,
    powerPreference: 'high-performance',
  })
  if (!context) throw new Error('this machine offers no WebGL 2')
  const renderer = new WebGLRenderer({ ...wanted, context })
  renderer.debug.checkShaderErrors = import.meta.env.DEV
  return renderer
}

/** Samples along a pixel's side with a graphics processor; without one they change with the pace, see there. */
export const SAMPLES: [number, number] = [2, 3]
