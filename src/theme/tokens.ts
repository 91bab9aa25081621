/**
 * The colours of the drafting table, once for CSS, scene and drawings. Hues follow Okabe and Ito (2008), so that a
 * colour-blind person can tell the states apart; each state also has a shape and a word.
 */
export type ThemeName = 'light' | 'dark' | 'sunlight'

export interface Tokens {
  /** The table itself: the ground behind everything. */
  paper: string
  panel: string
  /** A little off the panel: heads, fields, rows under the pointer. */
  wash: string
  ink: string
  quiet: string
  line: string
  accent: string
  /** Behind a selected row. */
  accentWash: string
  /** Text on a filled accent. */
  onAccent: string
  holds: string
  look: string
  fails: string
  failsWash: string
  compare: string
  concrete: string
  concreteShade: string
  steel: string
  loop: string
  strap: string
  room: string
  water: string
  ground: string
  road: string
}

const light: Tokens = {
  paper: '#F6F4EF',
  panel: '#FFFFFF',
  wash: '#F3F1EB',
  ink: '#1E2328',
  quiet: '#5B636B',
  line: '#DAD6CC',
  accent: '#0072B2',
  accentWash: '#EDF5FA',
  onAccent: '#FFFFFF',
  holds: '#007E5C',
  look: '#8F5E00',
  fails: '#B84600',
  failsWash: '#FBEBE2',
  compare: '#A2568A',
  concrete: '#D3CEC2',
  concreteShade: '#B3AD9F',
  steel: '#8D949A',
  loop: '#6E6858',
  strap: '#8A7A2A',
  room: '#0072B2',
  water: '#C9DDE4',
  ground: '#E4E1D8',
  road: '#CFCAC0',
}

const dark: Tokens = {
  paper: '#15181B',
  panel: '#1D2125',
  wash: '#262B30',
  ink: '#E8E6E1',
  quiet: '#A3A9AE',
  line: '#343A40',
  accent: '#56B4E9',
  accentWash: '#1F3442',
  onAccent: '#0E1113',
  holds: '#2BC79A',
  look: '#E69F00',
  fails: '#FF7A2F',
  failsWash: '#3A2419',
  compare: '#CC79A7',
  concrete: '#7F7C74',
  concreteShade: '#5F5D57',
  steel: '#5E666D',
  loop: '#B9B4A6',
  strap: '#C8B85A',
  room: '#56B4E9',
  water: '#24404C',
  ground: '#202428',
  road: '#33373B',
}

const sunlight: Tokens = {
  paper: '#FFFFFF',
  panel: '#FFFFFF',
  wash: '#F0F0F0',
  ink: '#000000',
  quiet: '#222222',
  line: '#000000',
  accent: '#0046A0',
  accentWash: '#D6E4F8',
  onAccent: '#FFFFFF',
  holds: '#006B4E',
  look: '#7A4E00',
  fails: '#B00000',
  failsWash: '#FFE3E3',
  compare: '#7A2E66',
  concrete: '#DDDDDD',
  concreteShade: '#A8A8A8',
  steel: '#8A8A8A',
  loop: '#000000',
  strap: '#6A5800',
  room: '#0046A0',
  water: '#BFE0F5',
  ground: '#EEEEEE',
  road: '#CCCCCC',
}

export const tokens: Record<ThemeName, Tokens> = { light, dark, sunlight }
