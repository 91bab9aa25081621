/** The views along the top, in their order. A view stands there only when it has something to show. */
import type { View } from './window-state'

export const viewWord: Record<View, string> = {
  site: 'Site',
  rig: 'Rig',
  fall: 'Fall',
  clashes: 'Clashes',
  teach: 'Teach',
  handover: 'Hand over',
}

/** Add a view here once its panel under src/panels is there. */
export const shownViews: View[] = ['site', 'rig', 'fall', 'clashes', 'teach', 'handover']
