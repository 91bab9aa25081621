/** Sets one field: an assignment as a call, for recipes of one line. */
export function put<T, K extends keyof T>(target: T, key: K, value: T[K]): void {
  target[key] = value
}
