import { EventEmitter } from 'node:events'
import type { ServerResponse } from 'node:http'
import { afterEach, beforeEach, expect, it, vi } from 'vitest'
import { Presence } from './presence'

beforeEach(() => void vi.useFakeTimers())
afterEach(() => void vi.useRealTimers())

function held(): ServerResponse {
  const response = new EventEmitter()
  return Object.assign(response, {
    writeHead: () => {},
    write: () => {},
    end: () => {},
  }) as unknown as ServerResponse
}

it('waits for the first window as long as it takes', () => {
  const gone = vi.fn()
  new Presence(gone, 100)
  vi.advanceTimersByTime(1e9)
  expect(gone).not.toHaveBeenCalled()
})

it('does not take a page that is loaded anew for gone', () => {
  const gone = vi.fn()
  const presence = new Presence(gone, 100)
  const first = held()
  presence.hold(first)
  first.emit('close')
  vi.advanceTimersByTime(99)
  presence.hold(held())
  vi.advanceTimersByTime(1e6)
  expect(gone).not.toHaveBeenCalled()
})

it('tells once that the last window has gone', () => {
  const gone = vi.fn()
  const presence = new Presence(gone, 100)
  const windows = [held(), held()]
  for (const window of windows) presence.hold(window)
  windows[0]?.emit('close')
  vi.advanceTimersByTime(1000)
  expect(gone).not.toHaveBeenCalled()
  windows[1]?.emit('close')
  vi.advanceTimersByTime(1000)
  expect(gone).toHaveBeenCalledOnce()
})
