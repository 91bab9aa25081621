/** Keys of the single papers, for asking for some of them only; without what makes them, so that a window stays light. */
import type { Language } from '../words'

export const paperKey = {
  package: 'package',
  sheet: (line: string, language: Language): string => `sheet/${language}/${line}`,
  tags: (language: Language): string => `tags/${language}`,
  drawings: 'drawings',
  tables: 'tables',
  room: 'room',
  results: 'results',
} as const
