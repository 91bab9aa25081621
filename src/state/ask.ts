/** Questions and passing words: state asks, the window shows, the answer comes back here. */
import { app } from './store'
import type { Notice, Question } from './window-state'

let answerWaiting: ((value: string | null) => void) | null = null

/** Puts a question in front of the window; null when it is closed without a choice. One at a time: a new one closes the old. */
export function ask(question: Question): Promise<string | null> {
  answerWaiting?.(null)
  app.setState({ question })
  return new Promise((resolve) => {
    answerWaiting = resolve
  })
}

export function answer(value: string | null): void {
  const waiting = answerWaiting
  answerWaiting = null
  app.setState({ question: null })
  waiting?.(value)
}

export function tell(text: string, kind: Notice['kind'] = 'done'): void {
  app.setState({ notice: { n: (app.getState().notice?.n ?? 0) + 1, text, kind } })
}
