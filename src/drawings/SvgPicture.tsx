/** Shows a picture tree on the screen as it is. Events bubble: find what was met with `refOf(event.target)`. */
import { createElement, type JSX, memo, type ReactNode } from 'react'
import type { SvgAttributes, SvgElement } from './svg'

const camel = (name: string): string =>
  name.startsWith('data-') || name.startsWith('aria-')
    ? name
    : name.replace(/-([a-z])/g, (_, c: string) => c.toUpperCase())

/** A picture has a dozen names of attributes, thousands of times over, and is drawn anew with every move of the hand. */
const known = new Map<string, string>()

function reactName(name: string): string {
  const found = known.get(name) ?? camel(name)
  known.set(name, found)
  return found
}

function reactAttributes(attributes: SvgAttributes, key: number): SvgAttributes {
  const made: SvgAttributes = { key }
  for (const [name, value] of Object.entries(attributes)) made[reactName(name)] = value
  return made
}

/** React elements of a picture tree. */
function svgToReact(node: SvgElement | string, key = 0): ReactNode {
  if (typeof node === 'string') return node
  return createElement(
    node.tag,
    reactAttributes(node.attributes, key),
    ...node.children.map((child, i) => svgToReact(child, i)),
  )
}

/** A picture as a component; it draws again only when its tree changes. */
export const SvgPicture = memo(function SvgPicture({ picture }: { picture: SvgElement }): JSX.Element {
  return svgToReact(picture) as JSX.Element
})

/** The `data-ref` of what an event met ('stanchion:S2'), or null. */
export function refOf(target: EventTarget | null): string | null {
  const found = target instanceof Element ? target.closest('[data-ref]') : null
  return found?.getAttribute('data-ref') ?? null
}
