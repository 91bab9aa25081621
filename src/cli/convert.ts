import { convert } from './convert-run'

process.exitCode = await convert(process.argv.slice(2), {
  out: (text) => process.stdout.write(text),
  error: (text) => process.stderr.write(text),
})
