import { expect, it } from 'vitest'
import { isSoftware } from '../../../src/scene/gl'

const named = (name: string) => ({
  RENDERER: 7937,
  getExtension: () => ({ UNMASKED_RENDERER_WEBGL: 37446 }),
  getParameter: (what: number) => (what === 37446 ? name : 'masked'),
})

it.each([
  ['ANGLE (Google, Vulkan 1.3.0 (SwiftShader Device (Subzero)), SwiftShader driver)', true],
  ['llvmpipe (LLVM 15.0.6, 256 bits)', true],
  ['ANGLE (Microsoft, Microsoft Basic Render Driver Direct3D11)', true],
  ['ANGLE (Example, Example Graphics 500, OpenGL 4.6)', false],
])('%s: drawn by the processor alone %s', (name, software) => {
  expect(isSoftware(named(name) as unknown as WebGL2RenderingContext)).toBe(software)
})
