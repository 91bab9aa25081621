import { Modal } from '@mantine/core'
import type { JSX, ReactNode } from 'react'
import { app } from '../../state/store'

export const closeDialog = (): void => app.setState({ dialog: null })

/** The frame that all dialogs share. */
export function DialogFrame(props: { title: string; size?: string; children: ReactNode }): JSX.Element {
  return (
    <Modal
      opened
      onClose={closeDialog}
      title={props.title}
      size={props.size ?? 'lg'}
      styles={{ title: { fontWeight: 650 } }}
    >
      {props.children}
    </Modal>
  )
}
