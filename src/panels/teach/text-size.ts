/** Text of the board in step with its size, so that the back row of a room can read it. */
import { type RefObject, useEffect, useState } from 'react'

const LEAST = 12
const MOST = 30

/** px, by the width and the height of the board. */
const boardText = (width: number, height: number): number =>
  Math.round(Math.min(MOST, Math.max(LEAST, Math.min(width / 64, height / 36))))

export function useBoardText(board: RefObject<HTMLElement | null>): number {
  const [size, setSize] = useState(LEAST)
  useEffect(() => {
    if (!board.current) return
    const watch = new ResizeObserver(([entry]) => {
      if (entry) setSize(boardText(entry.contentRect.width, entry.contentRect.height))
    })
    watch.observe(board.current)
    return () => watch.disconnect()
  }, [board])
  return size
}
