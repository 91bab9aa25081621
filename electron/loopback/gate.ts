import { randomBytes, timingSafeEqual } from 'node:crypto'
import type { IncomingMessage } from 'node:http'

/** Why a request is not let in; the words are for a person who sees them in a browser. */
export interface Refusal {
  status: number
  words: string
}

type Asked = Pick<IncomingMessage, 'headers' | 'method'>

/**
 * Who may talk to the loopback host: the one browser that came first with the one-time token, from the host's own page.
 * Host is checked against other names for this machine, Origin against other pages, the cookie against other programs.
 */
export class Gate {
  private token: string | null = secret()
  private session = secret()
  private cookie: string
  readonly origin: string

  constructor(private port: number) {
    this.origin = `http://127.0.0.1:${port}`
    // Cookies are shared by all ports of a machine, so the port is in the name.
    this.cookie = `fallroom-${port}`
  }

  /** The address to open. It works once. */
  address(): string {
    return `${this.origin}/?token=${this.token ?? ''}`
  }

  /** The cookie to set if this is the token, which is then used up; otherwise null. */
  exchange(given: string | null): string | null {
    if (this.token === null || given === null || !same(given, this.token)) return null
    this.token = null
    return `${this.cookie}=${this.session}; HttpOnly; SameSite=Strict; Path=/`
  }

  /** Every request, the first one too. */
  checkSource(request: Asked): Refusal | null {
    if (request.headers.host !== `127.0.0.1:${this.port}`) {
      return { status: 421, words: 'This address is not served here.' }
    }
    const { origin } = request.headers
    const foreign = origin !== undefined && origin !== this.origin
    // A request that changes or reads files always says where it comes from.
    const unsigned = request.method !== 'GET' && request.method !== 'HEAD' && origin === undefined
    if (foreign || unsigned) return { status: 403, words: 'Requests from other pages are refused.' }
    return null
  }

  checkSession(request: Asked): Refusal | null {
    const given = cookieValue(request.headers.cookie ?? '', this.cookie)
    if (given !== null && same(given, this.session)) return null
    return {
      status: 403,
      words: 'This address belongs to one window only, and has been used. Run npm start again for a new one.',
    }
  }
}

function secret(): string {
  return randomBytes(32).toString('base64url')
}

/** Takes the same time wherever two texts differ. */
function same(given: string, wanted: string): boolean {
  const a = Buffer.from(given)
  const b = Buffer.from(wanted)
  return a.length === b.length && timingSafeEqual(a, b)
}

function cookieValue(header: string, name: string): string | null {
  const found = header.split(';').map((part) => part.trim().split('='))
  return found.find(([key]) => key === name)?.[1] ?? null
}
