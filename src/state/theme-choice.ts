/** Light, dark or sunlight, or what the system says; kept between starts on this machine. */
import { applyTheme } from '../theme/apply'
import type { ThemeName } from '../theme/tokens'
import { recall, remember } from './memory'
import { app } from './store'
import type { ThemeChoice } from './window-state'

const choices: ThemeChoice[] = ['light', 'dark', 'sunlight', 'system']
const darkQuery = (): MediaQueryList => window.matchMedia('(prefers-color-scheme: dark)')

const resolve = (choice: ThemeChoice): ThemeName =>
  choice === 'system' ? (darkQuery().matches ? 'dark' : 'light') : choice

export function setTheme(themeChoice: ThemeChoice): void {
  const theme = resolve(themeChoice)
  applyTheme(theme)
  app.setState({ themeChoice, theme })
  remember('theme', themeChoice)
}

/** At start: the last choice, and from then on in step with the system where that was chosen. */
export function startTheme(): void {
  const last = recall('theme')
  setTheme(choices.find((c) => c === last) ?? 'system')
  darkQuery().addEventListener('change', () => {
    if (app.getState().themeChoice === 'system') setTheme('system')
  })
}
