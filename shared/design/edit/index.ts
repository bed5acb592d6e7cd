/** Edits of a design, each small, pure and checked: table of contents. */

export {
  type Added,
  addFastener,
  addFlange,
  addGroup,
  addMerge,
  addPort,
  addRunner,
  addTube,
} from './add';
export { addSensor, addService } from './addAccess';
export { addSurrounding, FIRST_CLEARANCE, type NewMesh, type NewShape, type PlacedShape } from './addSurrounding';
export { canDuplicate, duplicate } from './duplicate';
export { checked, type Edited, refused } from './edited';
export { readBanks, readCylinders, setCylinders, setFiringOrder, writeBanks, writeCylinders } from './engine';
export {
  setAir,
  setBaseline,
  setCast,
  setCombustion,
  setFiringAngles,
  setFitted,
  setFlow,
  setIntake,
  setLifts,
  setSketch,
  setTailpipe,
} from './engineParts';
export { reshapeOpening, sizeOf } from './opening';
export { middleOfSurrounding, placesOf, shiftedSurrounding, withPlaces } from './places';
export { remove } from './remove';
export { rename } from './rename';
export { type Change, setFields } from './setFields';
export {
  fastenersOf,
  freeId,
  isListKind,
  isRecordKind,
  type ListKind,
  placeOfThing,
  type RecordKind,
  type Segments,
  segmentsOf,
  type Thing,
} from './things';
