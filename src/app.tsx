/** The window's frame: our look around everything, and what is shown where a part of it breaks. */
import { MantineProvider } from '@mantine/core'
import type { JSX } from 'react'
import { Broken } from './panels/shell/Broken'
import { ErrorBoundary } from './panels/shell/ErrorBoundary'
import { Shell } from './panels/shell/Shell'
import { useApp } from './state/store'
import { mantineTheme } from './theme/mantine'

export function App(): JSX.Element {
  const dark = useApp((s) => s.theme === 'dark')
  return (
    <MantineProvider theme={mantineTheme} forceColorScheme={dark ? 'dark' : 'light'}>
      <ErrorBoundary fallback={(why, again) => <Broken why={why} again={again} />}>
        <Shell />
      </ErrorBoundary>
    </MantineProvider>
  )
}
