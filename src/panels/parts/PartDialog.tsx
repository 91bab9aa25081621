import type { JSX } from 'react'
import { DialogFrame } from '../shell/DialogFrame'

export default function Dialog(): JSX.Element {
  return <DialogFrame title="x">x</DialogFrame>
}
