/**
 * Inks by meaning. On the screen they are the window's CSS variables (with the light look as what is used where none
 * is set); on paper they are plain values that stay apart in black and white too, where shape and dash carry meaning.
 */
export type Ink =
  | 'paper'
  | 'panel'
  | 'ink'
  | 'quiet'
  | 'line'
  | 'accent'
  | 'holds'
  | 'look'
  | 'fails'
  | 'ghost'
  | 'room'
  | 'concrete'
  | 'strap'
  | 'ground'
  | 'water'

export interface Theme {
  inks: Record<Ink, string>
  /** Paper has no hover and no grab areas, and its strokes are thinner. */
  medium: 'screen' | 'paper'
  /** Text size of labels in picture units: px on screen, points on paper. */
  textSize: number
  /** Width of a firm stroke in picture units. */
  stroke: number
}

export const screenTheme: Theme = {
  medium: 'screen',
  textSize: 11,
  stroke: 1.5,
  inks: {
    paper: 'var(--paper, #F6F4EF)',
    panel: 'var(--panel, #FFFFFF)',
    ink: 'var(--ink, #1E2328)',
    quiet: 'var(--quiet-ink, #5B636B)',
    line: 'var(--line, #DAD6CC)',
    accent: 'var(--accent, #0072B2)',
    holds: 'var(--holds, #009E73)',
    look: 'var(--look-here, #B87800)',
    fails: 'var(--fails, #C24A00)',
    ghost: 'var(--ghost, #A2568A)',
    room: 'var(--room, #0072B2)',
    concrete: 'var(--concrete, #CFCBC0)',
    strap: 'var(--strap, #8A7B2E)',
    ground: 'var(--ground, #B8B2A4)',
    water: 'var(--water, #8FB4C9)',
  },
}

export const paperTheme: Theme = {
  medium: 'paper',
  textSize: 7.5,
  stroke: 0.9,
  inks: {
    paper: '#FFFFFF',
    panel: '#FFFFFF',
    ink: '#000000',
    quiet: '#4A4A4A',
    line: '#9A9A9A',
    accent: '#000000',
    holds: '#00543D',
    look: '#6B4700',
    fails: '#9A2E00',
    ghost: '#7A2E66',
    room: '#1F4E79',
    concrete: '#D9D9D9',
    strap: '#333333',
    ground: '#BFBFBF',
    water: '#C9D6DE',
  },
}
