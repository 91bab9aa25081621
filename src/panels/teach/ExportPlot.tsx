/** The lesson's plot as a file: for a slide, or for the wall of the site office. */
import { Button, Menu } from '@mantine/core'
import { ChevronDown } from 'lucide-react'
import type { JSX } from 'react'
import type { Lesson } from '../../drawings/teach/lesson'
import { exportPlot } from '../fall/export-plot'

/** While a quiz hides the plot there is nothing to export: the file would tell the answer. */
export function ExportPlot({ lesson, hidden }: { lesson: Lesson | null; hidden: boolean }): JSX.Element {
  const file = (type: 'svg' | 'png') => (): void => {
    if (lesson) void exportPlot(lesson.plot, `lesson-${lesson.id}`, type)
  }
  return (
    <Menu position="bottom-end">
      <Menu.Target>
        <Button
          size="xs"
          variant="default"
          disabled={!lesson || hidden}
          rightSection={<ChevronDown size={14} aria-hidden />}
        >
          Export
        </Button>
      </Menu.Target>
      <Menu.Dropdown>
        <Menu.Item onClick={file('svg')}>Plot as SVG</Menu.Item>
        <Menu.Item onClick={file('png')}>Plot as PNG</Menu.Item>
      </Menu.Dropdown>
    </Menu>
  )
}
