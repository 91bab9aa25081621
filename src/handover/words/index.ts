import { en } from './en'
import { es } from './es'
import { fr } from './fr'
import type { Language, Words } from './types'

export { type Language, languages, type Words } from './types'

const all: Record<Language, Words> = { en, es, fr }

export const wordsOf = (language: Language): Words => all[language]
