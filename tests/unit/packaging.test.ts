import { existsSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { describe, expect, it } from 'vitest'

const root = fileURLToPath(new URL('../..', import.meta.url))
const read = (file: string) => JSON.parse(readFileSync(join(root, file), 'utf8'))
const config = read('packaging/electron-builder.json')
const manifest = read('package.json')

describe('the packages', () => {
  it('have the fuses that close side doors', () => {
    expect(config.electronFuses).toMatchObject({
      runAsNode: false,
      enableNodeOptionsEnvironmentVariable: false,
      enableNodeCliInspectArguments: false,
      enableEmbeddedAsarIntegrityValidation: true,
      onlyLoadAppFromAsar: true,
      grantFileProtocolExtraPrivileges: false,
    })
  })

  it('are made for three systems, publish nowhere and hold only what was built', () => {
    for (const system of ['win', 'mac', 'linux']) expect(config[system].target.length).toBeGreaterThan(0)
    expect(config.publish).toBeNull()
    expect(config.files).toContain(manifest.main)
    expect(config.files).toContain('!node_modules/**')
  })

  it('start from a file that the build makes', () => {
    const build = readFileSync(join(root, 'scripts/lib/build.mjs'), 'utf8')
    expect(build).toContain("'electron/main/main.ts', file: 'main.js'")
    expect(existsSync(join(root, 'electron/main/main.ts'))).toBe(true)
  })
})
