/** What the method takes for granted, said before anybody has to ask. */
import type { Content } from 'pdfmake/interfaces'
import { heading, say } from '../pdf/paper'
import type { Chapter } from './context'

const ASSUMPTIONS: readonly string[] = [
  'Every uncertain figure has a low and a high end. A soft line has the low end of stiffness and absorber force, the least pretension and the warmest service temperature; a stiff line the opposite. A low connector has the low plateau, a high one the high plateau. Each finding is the worst of these corners.',
  "At intermediate stanchions the wire rope slides or is held, as the plan says; findings are judged at the line's own grip, and a rope that jams is told as a warning.",
  'The rope hangs between the heads as an exact elastic catenary under its own weight; the whole chain between the end stanchions is given its stiffness and mass.',
  'Head positions are those measured after tensioning; heads give from there with the stiffness of shaft and tie-back legs.',
  'Energy method: all workers who fall together fall at one station and are the one under study; the weight is lowered by free fall, line drop and connector extension, and line and connector take that energy up. The inertia of the rope is left out.',
  'Method in time: lumped masses on the rope, elements of at most 0.125 m; the tension told is the greatest mean over 5 ms in any element.',
  'Falls are computed in the middle of every span, the fall room at many stations of each; falls beside a stanchion are covered for arrest force and connector.',
  'Harness stretch takes no energy. The free fall is never taken as less than nothing for clearance; the fall room does count a short connector on a high line.',
  'Sideways the body swings from the edge of where it can stand; the room is the union over stations, workers and lines, with body, side margin and the margin below around it.',
  'A bracket is a rigid tube; its loops are equal springs that only pull, its levelling bolts far stiffer springs that only push.',
  "Tie-back legs are straight between head and loop; the girder's slope is neglected for them.",
  'Station is measured along the top centreline from the start of the girder; loops are counted from 1 at the start.',
]

export const assumptionChapter = (c: Chapter): Content[] => [
  heading(c.letters, 'Assumptions', 1),
  { ul: ASSUMPTIONS.map((t) => say(c.letters, t)) },
]
