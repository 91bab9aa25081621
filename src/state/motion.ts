/** Whether the person has asked the system for less motion: then the camera jumps, and nothing plays unasked. */
export const stillWanted = (): boolean => window.matchMedia('(prefers-reduced-motion: reduce)').matches
