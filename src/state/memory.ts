/** Small preferences of this machine, kept by the desk. */
import { getDesk } from '../desk/desk'

type Preference = 'theme' | 'units' | 'hint' | 'parts' | 'clipboard' | 'lastParts' | 'sight'

export const remember = (key: Preference, value: string): void => getDesk().memory.set(key, value)

export const recall = (key: Preference): string | null => getDesk().memory.get(key)
