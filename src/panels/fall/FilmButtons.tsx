/** The fall as a file to show elsewhere: a video where the machine makes one, else and besides its pictures. */
import { Button, Menu } from '@mantine/core'
import { ChevronDown } from 'lucide-react'
import { type JSX, useState } from 'react'
import type { Dropped } from '../../state/fall/fall-store'
import { makePictures, makeVideo, videoType } from './film'

export function FilmButtons({ dropped }: { dropped: Dropped }): JSX.Element {
  const [filming, setFilming] = useState<{ share: number; stop: AbortController } | null>(null)
  const start = (make: typeof makeVideo) => (): void => {
    const stop = new AbortController()
    const tell = (share: number): void => setFilming({ share, stop })
    tell(0)
    void make(dropped, tell, stop.signal).finally(() => setFilming(null))
  }
  if (filming) {
    return (
      <Button size="xs" variant="default" onClick={() => filming.stop.abort()}>
        {`Making it: ${Math.round(filming.share * 100)} %. Cancel`}
      </Button>
    )
  }
  return (
    <Menu position="top-end" width={260}>
      <Menu.Target>
        <Button size="xs" variant="default" rightSection={<ChevronDown size={14} aria-hidden />}>
          Export
        </Button>
      </Menu.Target>
      <Menu.Dropdown>
        {videoType() ? <Menu.Item onClick={start(makeVideo)}>Video at 1/4 speed (webm)</Menu.Item> : null}
        <Menu.Item onClick={start(makePictures)}>Pictures, one each 0.03 s (png in zip)</Menu.Item>
      </Menu.Dropdown>
    </Menu>
  )
}
