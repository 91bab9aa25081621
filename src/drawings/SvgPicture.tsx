/** Shows a picture tree on the screen as it is. Events bubble: find what was met with `refOf(event.target)`. */
import { createElement, type JSX, memo, type ReactNode } from 'react'
import type { SvgAttributes, SvgElement } from './svg'

const camel = (name: string): string =>
  name.startsWith('data-') || name.startsWith('aria-')
    ? name
    : name.replace(/-([a-z])/g, (_, c: string) => c.toUpperCase())

const reactAttributes = (attributes: SvgAttributes): SvgAttributes =>
  Object.fromEntries(Object.entries(attributes).map(([name, value]) => [camel(name), value]))

/** React elements of a picture tree. */
function svgToReact(node: SvgElement | string, key = 0): ReactNode {
  if (typeof node === 'string') return node
  return createElement(
    node.tag,
    { key, ...reactAttributes(node.attributes) },
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
