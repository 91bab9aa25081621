import { defineConfig } from 'vitest/config'

export default defineConfig({
  test: {
    include: ['src/**/*.test.{ts,tsx}', 'tests/unit/**/*.test.{ts,tsx}', 'electron/**/*.test.ts'],
    environment: 'node',
    testTimeout: 60_000,
  },
})
