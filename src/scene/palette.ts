/** Colours of the scene: the window's tokens, by the theme that is on. */
import { useApp } from '../state/store'
import { type Tokens, tokens } from '../theme/tokens'

export const usePalette = (): Tokens => tokens[useApp((s) => s.theme)]
