/** The source of every part of the library. */
export const EXAMPLE_FIGURES = "example figures: replace with your parts' documentation"

/** A part whose figures are still the examples: results that rest on it say so. */
export function isExample(part: { source: string }): boolean {
  return part.source.toLowerCase().startsWith('example figures')
}
