/** The papers' fonts as they lie in the installed packages. */
import { readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import type { PaperFonts } from '../handover/pdf/engine'

const fontFile = (name: string): Uint8Array =>
  new Uint8Array(readFileSync(fileURLToPath(import.meta.resolve(name))))

export const paperFonts = (): PaperFonts => ({
  regular: fontFile('@expo-google-fonts/inter/400Regular/Inter_400Regular.ttf'),
  bold: fontFile('@expo-google-fonts/inter/700Bold/Inter_700Bold.ttf'),
  fallback: fontFile('dejavu-fonts-ttf/ttf/DejaVuSans.ttf'),
  fallbackBold: fontFile('dejavu-fonts-ttf/ttf/DejaVuSans-Bold.ttf'),
})
