import type { ServerResponse } from 'node:http'

/** A page that is loaded anew is away for a moment. */
const GRACE = 6_000

/**
 * Knows whether the window is still there: it holds one open answer for as long as it lives. When the last one has been
 * closed for `grace` milliseconds, `gone` is called once.
 */
export class Presence {
  private open = new Set<ServerResponse>()
  private timer: NodeJS.Timeout | undefined

  constructor(
    private gone: () => void,
    private grace = GRACE,
  ) {}

  hold(response: ServerResponse): void {
    clearTimeout(this.timer)
    response.writeHead(200, { 'content-type': 'text/event-stream', 'cache-control': 'no-store' })
    response.write(': here\n\n')
    this.open.add(response)
    response.on('close', () => this.drop(response))
  }

  end(): void {
    clearTimeout(this.timer)
    for (const response of this.open) response.end()
    this.open.clear()
  }

  private drop(response: ServerResponse): void {
    if (!this.open.delete(response) || this.open.size > 0) return
    this.timer = setTimeout(this.gone, this.grace)
  }
}
