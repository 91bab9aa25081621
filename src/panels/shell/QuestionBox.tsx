/** A question in front of the window. Escape and the outside mean "no answer". */
import { Button, Group, Modal, Text } from '@mantine/core'
import type { JSX } from 'react'
import { answer } from '../../state/ask'
import { useApp } from '../../state/store'

export function QuestionBox(): JSX.Element | null {
  const question = useApp((s) => s.question)
  if (!question) return null
  return (
    <Modal opened onClose={() => answer(null)} title={question.title} size="md">
      <Text size="sm" style={{ whiteSpace: 'pre-wrap', overflowWrap: 'anywhere' }} mb="lg">
        {question.text}
      </Text>
      <Group justify="flex-end" gap="sm">
        {question.choices.map(({ value, label, main, grave }) => (
          <Button
            key={value}
            variant={main ? 'filled' : 'default'}
            color={grave && main ? 'var(--fails)' : 'accent'}
            data-autofocus={main || undefined}
            onClick={() => answer(value)}
          >
            {label}
          </Button>
        ))}
      </Group>
    </Modal>
  )
}
