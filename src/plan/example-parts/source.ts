/** The source of every part of the library. */
export const EXAMPLE_FIGURES = "example figures: replace with your parts' documentation"
