import { chromium } from '@playwright/test'
import { startLoopback } from './electron/loopback'
import { mkdtempSync } from 'node:fs'
const [,, built, plan, out, theme='light', w='1280', h='800'] = process.argv
const home = mkdtempSync('/tmp/look-')
const host = await startLoopback({ built, home, plan })
const b = await chromium.launch({ executablePath: '/usr/bin/chromium', args: ['--no-sandbox', '--enable-unsafe-swiftshader'] })
const page = await b.newPage({ viewport: { width: +w, height: +h } })
page.on('console', (m) => { if (['error','warning'].includes(m.type())) console.log(m.type(), m.text().slice(0,400)) })
await page.goto(host.address)
await page.waitForFunction(() => document.documentElement.dataset.scene === 'ready', undefined, { timeout: 90000 })
await page.evaluate(() => (window as any).fallroom.store.setState({ hintStep: null }))
await page.waitForFunction(() => { const s = (window as any).fallroom.store.getState(); return s.study.whole && s.study.ofPlan === s.plan }, undefined, { timeout: 90000 })
await page.waitForTimeout(2500)
await page.screenshot({ path: out })
await b.close(); await host.stop()
