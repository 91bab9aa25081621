/** npm run build [-- --verbose]. With --gently, as npm install calls it, a failure is told but is none of the caller's. */
import { buildFault, buildIfStale } from './lib/build.mjs'

const asked = (flag) => process.argv.includes(flag)

try {
  const built = await buildIfStale({ quiet: !asked('--verbose') })
  console.log(built ? 'The window and its desktops are built.' : 'Nothing changed since the last build.')
} catch (error) {
  console.error(`The window could not be built: ${buildFault(error)}`)
  process.exitCode = asked('--gently') ? 0 : 1
}
