import { defineConfig } from 'vitest/config'

export default defineConfig({
  test: {
    include: ['src/**/*.test.{ts,tsx}', 'tests/unit/**/*.test.{ts,tsx}', 'electron/**/*.test.ts'],
    environment: 'node',
    setupFiles: ['tests/support/setup.ts'],
    // Generous, for shared machines: a test that hangs still ends, one that is slow does not fail.
    testTimeout: 180_000,
    hookTimeout: 180_000,
  },
})
