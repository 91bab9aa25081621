import { buildIfStale } from './lib/build.mjs'

const built = await buildIfStale({ quiet: !process.argv.includes('--verbose') })
console.log(built ? 'The window and its desktops are built.' : 'Nothing changed since the last build.')
