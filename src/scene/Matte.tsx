/** The one matte surface of the model, set back a hair so that inked edges lie crisp on it. */
import { DoubleSide, FrontSide } from 'three'

interface MatteProps {
  color: string
  /** Below 1 the surface is a sheet that is looked through. */
  opacity?: number
  bothSides?: boolean
}

export function Matte({ color, opacity = 1, bothSides = false }: MatteProps) {
  return (
    <meshLambertMaterial
      color={color}
      opacity={opacity}
      transparent={opacity < 1}
      depthWrite={opacity === 1}
      side={bothSides ? DoubleSide : FrontSide}
      forceSinglePass
      polygonOffset
      polygonOffsetFactor={1}
      polygonOffsetUnits={1}
    />
  )
}
