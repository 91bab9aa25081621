/** Keys to commands. While something is typed only shortcuts with Mod count, and of those not the ones of editing text. */
import { cancelGesture, inGesture } from '../edit'
import { type Command, canRun, run } from './command'
import { commands } from './registry'

const isMac = (): boolean => /Mac|iPhone|iPad/.test(navigator.platform)

const textShortcuts = ['Mod+Z', 'Mod+Shift+Z', 'Mod+X', 'Mod+C', 'Mod+V', 'Mod+A']

/** The shortcut that a key event spells: 'Mod+Shift+Z', 'Alt+1', 'G'. */
function spelled(e: KeyboardEvent): string {
  const mod = isMac() ? e.metaKey : e.ctrlKey
  const key = e.key.length === 1 && /[a-z]/i.test(e.key) ? e.key.toUpperCase() : named(e)
  const parts = [mod ? 'Mod' : '', e.altKey ? 'Alt' : '', e.shiftKey ? 'Shift' : '', key]
  return parts.filter(Boolean).join('+')
}

/** Digits and signs by where they lie, so that Shift and Alt do not change their name. */
function named(e: KeyboardEvent): string {
  if (e.code.startsWith('Digit')) return e.code.slice(5)
  if (e.code === 'BracketLeft') return '['
  if (e.code === 'BracketRight') return ']'
  if (e.code === 'Slash' || e.code === 'Period' || e.code === 'Comma') return e.code
  return e.key === 'Backspace' ? 'Delete' : e.key
}

const typing = (target: EventTarget | null): boolean =>
  target instanceof HTMLElement &&
  target.closest('input, textarea, select, [contenteditable="true"]') !== null

/** What Enter presses by itself; a handle is taken hold of, so there Enter types where it stands. */
const pressed = (target: EventTarget | null): boolean =>
  target instanceof HTMLElement &&
  target.closest('button:not([data-handle]), a, summary, [role="treeitem"], [role="tab"]') !== null

/** Something open in front (dialog, menu, palette, list of choices) has the keys to itself; a closed one that is kept has not. */
const inFront = (): boolean =>
  [...document.querySelectorAll('[role="dialog"], [role="menu"], [role="listbox"]')].some((e) =>
    e.checkVisibility(),
  )

function commandFor(shortcut: string): Command | undefined {
  return commands.find((c) => c.shortcut === shortcut && canRun(c))
}

export function startKeys(): () => void {
  const onKey = (e: KeyboardEvent): void => {
    if (e.defaultPrevented || e.isComposing) return
    if (e.key === 'Escape' && inGesture()) {
      cancelGesture()
      return
    }
    const shortcut = spelled(e)
    if (typing(e.target) && (!shortcut.startsWith('Mod+') || textShortcuts.includes(shortcut))) return
    if (inFront() || (shortcut === 'Enter' && pressed(e.target))) return
    const found = commandFor(shortcut === 'Mod+Y' ? 'Mod+Shift+Z' : shortcut)
    if (!found) return
    e.preventDefault()
    run(found)
  }
  window.addEventListener('keydown', onKey)
  return () => window.removeEventListener('keydown', onKey)
}

/** A shortcut as it is shown: 'Ctrl+S', on a Mac with its signs. */
export function shownShortcut(shortcut: string): string {
  const mac = isMac()
  const words: Record<string, string> = {
    Mod: mac ? '⌘' : 'Ctrl',
    Alt: mac ? '⌥' : 'Alt',
    Shift: mac ? '⇧' : 'Shift',
    ArrowLeft: '←',
    ArrowRight: '→',
    ArrowUp: '↑',
    ArrowDown: '↓',
    Escape: 'Esc',
    Delete: 'Del',
    Slash: '?',
    Period: '.',
    Comma: ',',
  }
  const parts = shortcut === 'Shift+Slash' ? ['?'] : shortcut.split('+').map((p) => words[p] ?? p)
  return parts.join(mac ? '' : '+')
}
