import { defineConfig } from '@playwright/test'
import { findBrowser, isRoot, quietFlags } from './scripts/lib/browsers.mjs'

const installed = findBrowser()

/** Two at most: without a graphics card every window draws on the processor. */
export default defineConfig({
  testDir: 'tests/browser',
  globalSetup: './tests/browser/support/build.ts',
  workers: 2,
  fullyParallel: false,
  forbidOnly: Boolean(process.env.CI),
  timeout: 180_000,
  // Drawn by the processor, a window can lag behind the hand; what fails twice in a row is a fault. A test that needed its
  // second try is named as flaky in the list, so that it is looked at.
  retries: process.env.CI ? 1 : 0,
  expect: { timeout: 20_000, toHaveScreenshot: { maxDiffPixelRatio: 0.02, animations: 'disabled' } },
  reporter: [['list'], ['json', { outputFile: 'test-results/browser.json' }]],
  snapshotPathTemplate: '{testDir}/pictures/{testFileName}/{arg}{ext}',
  use: {
    viewport: { width: 1280, height: 800 },
    colorScheme: 'light',
    screenshot: 'only-on-failure',
    launchOptions: {
      ...(installed ? { executablePath: installed } : {}),
      args: ['--enable-unsafe-swiftshader', ...quietFlags, ...(isRoot() ? ['--no-sandbox'] : [])],
    },
  },
})
