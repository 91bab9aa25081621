import { readFileSync } from 'node:fs'
import react from '@vitejs/plugin-react'
import { defineConfig } from 'vite'

const { version } = JSON.parse(readFileSync(new URL('./package.json', import.meta.url), 'utf8'))

/** Addresses stay relative, so that the same build is served by the loopback host and by Electron's own protocol. */
export default defineConfig({
  base: './',
  plugins: [react()],
  define: { __FALLROOM_VERSION__: JSON.stringify(version) },
  worker: { format: 'es' },
  build: {
    target: 'es2023',
    outDir: 'dist',
    // Data addresses would need a wider content policy than 'self'.
    assetsInlineLimit: 0,
    chunkSizeWarningLimit: 4000,
    reportCompressedSize: false,
    // Some fifty small files shared by the panels cost the start more than their bytes do: they travel as two.
    rolldownOptions: {
      output: {
        codeSplitting: {
          groups: [
            { name: 'picture', test: /node_modules\/(three|@react-three)\/|src\/scene\//, priority: 2 },
            { name: 'shared', minShareCount: 3, priority: 1 },
          ],
        },
      },
    },
  },
})
