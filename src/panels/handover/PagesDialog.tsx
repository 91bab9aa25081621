/** The pages of a paper as they will print, drawn from the PDF itself. */
import { Modal } from '@mantine/core'
import { GlobalWorkerOptions, getDocument, type PDFDocumentProxy } from 'pdfjs-dist'
import workerUrl from 'pdfjs-dist/build/pdf.worker.min.mjs?url'
import { type JSX, useEffect, useRef, useState } from 'react'
import css from './handover.module.css'

GlobalWorkerOptions.workerSrc = workerUrl

/** Pages are drawn at this many dots a point, so that small type can be read. */
const DOTS = 1.6

export default function PagesDialog(props: {
  title: string
  bytes: Uint8Array
  close: () => void
}): JSX.Element {
  const [paper, setPaper] = useState<PDFDocumentProxy | null>(null)
  const [why, setWhy] = useState<string | null>(null)
  useEffect(() => {
    // The reader takes the bytes for itself; the copy leaves ours whole.
    const task = getDocument({ data: props.bytes.slice(), isEvalSupported: false })
    task.promise.then(setPaper, (error: unknown) =>
      setWhy(error instanceof Error ? error.message : String(error)),
    )
    return () => void task.destroy()
  }, [props.bytes])
  return (
    <Modal opened onClose={props.close} title={props.title} size="min(1000px, 96vw)">
      {why ? <p>The pages could not be drawn: {why}</p> : null}
      {paper
        ? Array.from({ length: paper.numPages }, (_, i) => <Page key={i} paper={paper} number={i + 1} />)
        : null}
    </Modal>
  )
}

function Page({ paper, number }: { paper: PDFDocumentProxy; number: number }): JSX.Element {
  const canvas = useRef<HTMLCanvasElement>(null)
  useEffect(() => {
    let given = true
    const draw = async (): Promise<void> => {
      const page = await paper.getPage(number)
      const at = canvas.current
      if (!at || !given) return
      const viewport = page.getViewport({ scale: DOTS })
      at.width = viewport.width
      at.height = viewport.height
      await page.render({ canvas: at, viewport }).promise
      at.dataset.drawn = 'yes'
    }
    draw().catch(() => undefined)
    return () => {
      given = false
    }
  }, [paper, number])
  return (
    <canvas ref={canvas} className={css.page} role="img" aria-label={`Page ${number} of ${paper.numPages}`} />
  )
}
