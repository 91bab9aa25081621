import type { JSX } from 'react'
import { labelOf } from '../../state/commands/command'
import { shownShortcut } from '../../state/commands/keys'
import { commands } from '../../state/commands/registry'
import { DialogFrame } from '../shell/DialogFrame'
import css from './help.module.css'

const hands: [string, string][] = [
  ['Drag a stanchion', 'snaps from loop gap to loop gap'],
  ['Shift while dragging', 'the feet of its tie-backs go along'],
  ['Alt while dragging', 'anywhere, not only between loops'],
  ['Esc while dragging', 'back to where it was'],
  ['Tab on the tape', 'from stanchion to foot to stanchion along the line'],
  ['Ctrl+K', 'find a command or a thing'],
]

/** All keys, by what they are for. */
export default function ShortcutsDialog(): JSX.Element {
  const groups = [...new Set(commands.map((c) => c.group))]
  return (
    <DialogFrame title="Keys" size="xl">
      <div className={css.columns}>
        {groups.map((group) => (
          <section key={group} className={css.group}>
            <h3>{group}</h3>
            <Rows
              rows={commands
                .filter((c) => c.group === group && c.shortcut)
                .map((c) => [labelOf(c), shownShortcut(c.shortcut ?? '')])}
            />
          </section>
        ))}
        <section className={css.group}>
          <h3>By hand</h3>
          <Rows rows={hands} />
        </section>
      </div>
    </DialogFrame>
  )
}

const Rows = ({ rows }: { rows: [string, string][] }): JSX.Element => (
  <table className={css.keys}>
    <tbody>
      {rows.map(([what, key]) => (
        <tr key={what}>
          <th scope="row">{what}</th>
          <td>{key}</td>
        </tr>
      ))}
    </tbody>
  </table>
)
