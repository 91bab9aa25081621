// @vitest-environment happy-dom
import { createRoot } from 'react-dom/client'
import { expect, it, vi } from 'vitest'
import Scene from '../../../src/scene/Scene'

/** Fires once as soon as something is observed, as a browser does. */
class Observer {
  constructor(private readonly told: () => void) {}
  observe(): void {
    queueMicrotask(this.told)
  }
  unobserve(): void {}
  disconnect(): void {}
}

it('without WebGL the scene says so plainly, and can be asked again', async () => {
  vi.stubGlobal('ResizeObserver', Observer)
  const box = { x: 0, y: 0, left: 0, top: 0, right: 800, bottom: 600, width: 800, height: 600 }
  vi.spyOn(Element.prototype, 'getBoundingClientRect').mockReturnValue({ ...box, toJSON: () => box })
  vi.spyOn(HTMLCanvasElement.prototype, 'getContext').mockReturnValue(null)
  const host = document.body.appendChild(document.createElement('div'))
  const root = createRoot(host)
  root.render(<Scene />)
  await vi.waitFor(() => expect(host.textContent).toContain('this machine offers no WebGL 2'), 5000)
  expect(host.textContent).toContain('Findings, tape, drawings and everything else go on without it.')
  expect(host.querySelector('button')?.textContent).toBe('Draw it again')
  root.unmount()
})
