import { sha256 } from '@noble/hashes/sha2.js'
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js'
import { canonical } from './canonical'
import type { Plan } from './types'

/**
 * sha256, as hexadecimal text, of the plan without its records, as JSON with sorted keys and no spaces. Everything that
 * counts changes it; inspections and approvals do not.
 */
export function planHash(plan: Plan): string {
  const { records: _, ...counted } = plan
  return bytesToHex(sha256(utf8ToBytes(canonical(counted))))
}
