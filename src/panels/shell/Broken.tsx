/** When the window itself breaks: the plan is still there; save it, then go on. */
import { Button, Group, Text, Title } from '@mantine/core'
import type { JSX } from 'react'
import { undo } from '../../state/edit'
import { saveAs } from '../../state/files/document'

export function Broken({ why, again }: { why: string; again: () => void }): JSX.Element {
  return (
    <div style={{ maxWidth: 560, margin: '80px auto', padding: 24 }} role="alert">
      <Title order={1} size="h3">
        A part of the window broke
      </Title>
      <Text my="md">
        The plan is unharmed and its changes are kept. Save a copy first, then go on; if it breaks again at
        once, undo the last change.
      </Text>
      <Text size="xs" c="dimmed" my="md">
        {why}
      </Text>
      <Group>
        <Button variant="filled" onClick={() => void saveAs()}>
          Save a copy
        </Button>
        <Button onClick={again}>Go on</Button>
        <Button
          onClick={() => {
            undo()
            again()
          }}
        >
          Undo the last change and go on
        </Button>
      </Group>
    </div>
  )
}
