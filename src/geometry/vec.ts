import type { Vec2, Vec3 } from '../plan/types'

export const add = (a: Vec3, b: Vec3): Vec3 => [a[0] + b[0], a[1] + b[1], a[2] + b[2]]
export const sub = (a: Vec3, b: Vec3): Vec3 => [a[0] - b[0], a[1] - b[1], a[2] - b[2]]
export const scale = (a: Vec3, k: number): Vec3 => [a[0] * k, a[1] * k, a[2] * k]
export const dot = (a: Vec3, b: Vec3): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2]
export const length = (a: Vec3): number => Math.hypot(a[0], a[1], a[2])
export const lerp = (a: Vec3, b: Vec3, t: number): Vec3 => add(a, scale(sub(b, a), t))
/** Distance in plan, m. */
export const planDistance = (a: Vec3 | Vec2, b: Vec3 | Vec2): number => Math.hypot(b[0] - a[0], b[1] - a[1])
export const degrees = (radians: number): number => (radians * 180) / Math.PI
export const radians = (deg: number): number => (deg * Math.PI) / 180
