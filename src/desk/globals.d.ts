/** From package.json, put in by the build. */
declare const __FALLROOM_VERSION__: string
