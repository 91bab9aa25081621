/** Puts the tokens on the document as CSS variables, under the names that style sheets and drawings use. */
import { type ThemeName, type Tokens, tokens } from './tokens'

const cssName: Record<keyof Tokens, string> = {
  paper: '--paper',
  panel: '--panel',
  wash: '--wash',
  ink: '--ink',
  quiet: '--quiet-ink',
  line: '--line',
  accent: '--accent',
  accentWash: '--accent-wash',
  onAccent: '--on-accent',
  holds: '--holds',
  look: '--look-here',
  fails: '--fails',
  failsWash: '--fails-wash',
  compare: '--ghost',
  concrete: '--concrete',
  concreteShade: '--concrete-shade',
  steel: '--steel',
  loop: '--loop',
  strap: '--strap',
  room: '--room',
  water: '--water',
  ground: '--ground',
  road: '--road',
}

export function applyTheme(theme: ThemeName, root: HTMLElement = document.documentElement): void {
  root.dataset.theme = theme
  root.style.colorScheme = theme === 'dark' ? 'dark' : 'light'
  for (const key of Object.keys(cssName) as (keyof Tokens)[]) {
    root.style.setProperty(cssName[key], tokens[theme][key])
  }
}
