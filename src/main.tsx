import '@fontsource-variable/inter'
import '@mantine/core/styles.css'
import '@mantine/notifications/styles.css'
import '@mantine/spotlight/styles.css'
import './theme/theme.css'
import { createRoot } from 'react-dom/client'
import { App } from './app'
import { startUp } from './state/start'

const root = document.getElementById('root')
if (root) createRoot(root).render(<App />)
void startUp()
