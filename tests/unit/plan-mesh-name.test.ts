import { describe, expect, it } from 'vitest'
import { meshNameProblem } from '../../src/plan/references/mesh-name'

describe('the file name of a model', () => {
  it.each(['pier.glb', 'models/pier 1.ifc', 'Wände/Brücke.obj', 'a..b.stl', '50% pier.glb'])(
    'may be %s',
    (name) => {
      expect(meshNameProblem(name)).toBeNull()
    },
  )

  it.each([
    '',
    ' ',
    '..',
    '../pier.glb',
    'models/../../pier.glb',
    'models/..',
    '/etc/passwd',
    '\\\\host\\share\\pier.glb',
    '..\\pier.glb',
    'C:\\pier.glb',
    'c:pier.glb',
    'file:///etc/passwd',
    'https://example.org/pier.glb',
    'data:model/gltf-binary;base64,AAAA',
    'javascript:alert(1)',
    '~/pier.glb',
    'models//pier.glb',
    './pier.glb',
    '%2e%2e/pier.glb',
    'models%2Fpier.glb',
    'x'.repeat(500),
  ])('may not be %s', (name) => {
    expect(meshNameProblem(name)).toMatch(/\w/)
  })
})
