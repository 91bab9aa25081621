/** Everything that stands in the scene; one file each. */
import { CameraRig } from './camera/CameraRig'
import { Invalidate } from './frame/Invalidate'
import { Painter } from './frame/Painter'
import { Probe } from './frame/Probe'
import { Still } from './frame/Still'
import { Cursor } from './handles/Cursor'
import { PointGrips } from './handles/PointGrips'
import { ToolHand } from './handles/ToolHand'
import { Light } from './Light'
import { Projector } from './labels/Projector'
import { Boxes } from './parts/Boxes'
import { Crew } from './parts/Crew'
import { CrossFrames } from './parts/CrossFrames'
import { Decks } from './parts/Decks'
import { Fallen } from './parts/Fallen'
import { GapMarks } from './parts/GapMarks'
import { Ghosts } from './parts/Ghosts'
import { Girders } from './parts/Girders'
import { Lanes } from './parts/Lanes'
import { Levels } from './parts/Levels'
import { LoopNumbers } from './parts/LoopNumbers'
import { Meshes } from './parts/Meshes'
import { NameLabels } from './parts/NameLabels'
import { RoomDimension } from './parts/RoomDimension'
import { Rooms } from './parts/Rooms'
import { Ropes } from './parts/Ropes'
import { Stanchions } from './parts/Stanchions'
import { TieBacks } from './parts/TieBacks'
import { TieOff } from './parts/TieOff'
import { ValueLabel } from './parts/ValueLabel'
import { FallScene } from './play/FallScene'

export function Contents() {
  return (
    <>
      <Light />
      <Levels />
      <Lanes />
      <Boxes />
      <Meshes />
      <Decks />
      <CrossFrames />
      <Girders />
      <LoopNumbers />
      <Stanchions />
      <TieBacks />
      <Ropes />
      <Fallen />
      <Crew />
      <FallScene />
      <Rooms />
      <TieOff />
      <RoomDimension />
      <GapMarks />
      <Ghosts />
      <NameLabels />
      <ValueLabel />
      <Cursor />
      <ToolHand />
      <PointGrips />
      <CameraRig />
      <Projector />
      <Still />
      <Painter />
      <Probe />
      <Invalidate />
    </>
  )
}
