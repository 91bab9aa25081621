/**
 * Why a model's file name is refused, or null. A model lies beside the plan file or in a folder below it, so that a
 * plan from a stranger can point at nothing else.
 */
export function meshNameProblem(file: string): string | null {
  if (file.trim() === '') return 'the file name is empty'
  if (file.length > 400) return 'the file name is too long'
  if (/^[a-z][a-z0-9+.-]*:/i.test(file)) {
    return 'must be a file beside the plan, is an address or a drive: models are never fetched'
  }
  if (/^[/\\~]/.test(file)) return 'must be a name beside the plan, not a path from the root of the disk'
  if (file.includes('\\')) return 'write folders with / between them'
  const steps = file.split('/')
  if (steps.some((s) => s === '..' || /%(2e|2f|5c)/i.test(s))) return 'leads out of the folder of the plan'
  if (steps.some((s) => s === '' || s === '.')) return 'has an empty step in its path'
  return null
}
