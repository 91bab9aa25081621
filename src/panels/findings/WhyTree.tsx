/** The sum behind a number as a tree: each value with its formula, the values put in, and where it comes from. */
import type { JSX } from 'react'
import { formatQuantity, type UnitSystem } from '../../plan/units'
import type { Explained } from '../../solver/explain'
import css from './findings.module.css'

/** How deep it is open at first: the sum itself; what its parts are made of opens by hand. */
const OPEN = 1

export function WhyTree({ tree, units }: { tree: Explained; units: UnitSystem }): JSX.Element {
  return (
    <div className={css.tree}>
      <Node node={tree} units={units} depth={0} />
    </div>
  )
}

function Node({ node, units, depth }: { node: Explained; units: UnitSystem; depth: number }): JSX.Element {
  if (node.parts.length === 0) return <Leaf node={node} units={units} />
  return (
    <details open={depth < OPEN}>
      <summary>
        <Line node={node} units={units} />
      </summary>
      <div className={css.parts}>
        {node.formula ? <p className={css.formula}>{node.formula}</p> : null}
        {node.parts.map((part, i) => (
          <Node key={`${i} ${part.label}`} node={part} units={units} depth={depth + 1} />
        ))}
        <Source node={node} />
      </div>
    </details>
  )
}

function Leaf({ node, units }: { node: Explained; units: UnitSystem }): JSX.Element {
  return (
    <div className={css.leaf} title={node.source}>
      <Line node={node} units={units} />
      {node.note ? <p className={css.source}>{node.note}</p> : null}
    </div>
  )
}

function Line({ node, units }: { node: Explained; units: UnitSystem }): JSX.Element {
  return (
    <span className={css.whyLine}>
      <span>
        {node.label}
        {node.symbol ? <i> {node.symbol}</i> : null}
      </span>
      <b>{formatQuantity(node.value, node.unit, units)}</b>
    </span>
  )
}

const Source = ({ node }: { node: Explained }): JSX.Element => (
  <p className={css.source}>
    {node.source}
    {node.note ? `. ${node.note}` : ''}
  </p>
)
