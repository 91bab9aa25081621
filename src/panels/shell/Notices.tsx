/** Passing words at the foot of the scene; polite to screen readers, gone after a while. */
import { Notifications, notifications } from '@mantine/notifications'
import { type JSX, useEffect } from 'react'
import { useApp } from '../../state/store'

const colour = { done: 'var(--accent)', look: 'var(--look-here)', fails: 'var(--fails)' }

export function Notices(): JSX.Element {
  const notice = useApp((s) => s.notice)
  useEffect(() => {
    if (!notice) return
    notifications.show({
      message: notice.text,
      color: colour[notice.kind],
      autoClose: notice.kind === 'done' ? 3000 : 9000,
      withBorder: true,
    })
  }, [notice])
  return <Notifications position="bottom-center" limit={3} transitionDuration={100} />
}
