/** Exact by definition: the international foot and pound (1959) and standard gravity (CGPM 1901). */
export const FOOT = 0.3048
export const INCH = 0.0254
export const POUND = 0.45359237
export const STANDARD_GRAVITY = 9.80665
/** N */
export const POUND_FORCE = POUND * STANDARD_GRAVITY
/** Pa */
export const PSI = POUND_FORCE / (INCH * INCH)
