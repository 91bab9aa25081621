/** A number taken apart: rows that add up or are put into a formula, and further parts under it. */
export interface ExplanationRow {
  label: string
  value: number | null
  unit: string
  total?: boolean
}

export interface Explanation {
  title: string
  formula?: string
  rows: ExplanationRow[]
  /** Which of the computed cases this is. */
  method?: string
  parts?: Explanation[]
}
