/** The kernel's table of contents. Pure functions on plain data: no DOM, files, clock or randomness. */

// Vectors, tolerances
export * from './vector';
export * from './tolerance';

// Curves: points and radii ⇄ straights and arcs; bend rows; frames
export { type Arc, type Centerline, centerline, type Segment, type Straight, setback } from './curve/centerline';
export { chordCount, pointAt, pointOnSegment, type Station, sampleCenterline } from './curve/pointAt';
export { type Bend, bends, isContinuous, straightIndices } from './curve/bends';
export { type BendRow, type BendTable, bendTable, fromBendTable } from './curve/bendTable';
export { type Frame, frames } from './curve/frames';

// The header: the design with its defaults and places worked out
export { massOf, massOfAll } from './header/mass';
export { type Frustum, type MergeGeometry, mergeAxes, mergeGeometry, type Pose } from './header/merge';
export {
  DEFAULT_MATERIAL,
  type Header,
  type ResolvedMerge,
  type ResolvedPort,
  type ResolvedRunner,
  radiiOf,
  resolveHeader,
} from './header/resolve';

// Rules
export { withAccess } from './check/access';
export { check, checkHeader } from './check/check';
export {
  adoptCounted,
  countedKey,
  countedSoup,
  knownCounted,
  type Meshes,
  placeMesh,
  placementOf,
  type TriangleSoup,
  treeOf,
} from './check/meshes';
export type { CheckReport, GroupReport, Margin, Problem, RuleName, RunnerReport } from './check/report';

// Measuring between any two things
export { nearestStation, type PartStations, partStations } from './measure/along';
export { components, type MeasureAnswer, type Measurement, measureBetween } from './measure/between';
export type { Span } from './measure/surfaces';
export type { Thing } from './measure/thing';

// All that is found about the space it must fit, in one answer; places and paths in few words
export { placeOnRunner } from './check/words';
export { type Leg, legsOf } from './room/legs';
export { type RoomPart, type RoomReport, roomParts } from './room/report';
export { roomReport } from './room/room';

// Layout
export { type BalanceOptions, type BalanceResult, balance, balancePoints, type Limit } from './layout/balance';
export { type Answer, type Follower, follower } from './layout/follow';
export type { Held } from './layout/held';
export { type Settled, settleEdit } from './layout/settleEdit';
export { limitWords } from './layout/limitWords';

// From ports and collectors to a laid header
export { firingOrderProblem } from './route/firingOrder';
export { gathered, type Harvest, MOST_LAYOUTS, nothingYet } from './route/harvest';
export { compareLayouts, type Layout, measuredLayout } from './route/layout';
export { type InletOrder, type Round, type Router, type RouterOptions, router } from './route/router';
export { swallowedEnds } from './route/swallowed';

// How short and how long a runner can be where it stands
export { lengthWindows } from './window/lengthWindows';
export { isEmpty, isOutside, outOfReach, withReach } from './window/outOfReach';
export { beyondUse, type GroupWindow, type RunnerWindow, type Window, type Windows } from './window/report';
export type { WindowOptions } from './window/runnerWindow';

// Shaping: the edits that a hand asks for, and what it snaps to
export { addBend, removeBend } from './shaping/addBend';
export { moveBend, movePoint, slideBend, slideDirection } from './shaping/movePoint';
export { moveMerge, movePort, turnMerge } from './shaping/moveMerge';
export { moveRun } from './shaping/moveRun';
export { moveBoxFace, moveCapsuleEnd, movePlane, moveSurrounding } from './shaping/moveSurrounding';
export { type Path, pathIn, pathOf, type Range, rangeAt, ridesEnd, ridesStart } from './shaping/path';
export { reseat } from './shaping/reseat';
export { type BendNumber, bendNumber, setBendNumber } from './shaping/setNumber';
export { setBendAngle, setRotation, setStraight } from './shaping/setRow';
export { type Snapped, type SnapTarget, snap, snapTurn, type Track } from './shaping/snap';
export { bendTargets, placeTargets } from './shaping/snapTargets';
export { swung, turningSide, turnRun } from './shaping/turnRun';

// Room for a welder's torch round a tube
export { type Chain, chain } from './clearance/chain';
export { type TorchReach, torchReach } from './reach/torch';

// Solids: closed meshes, and what makes one sound
export { type Bounds, joinMeshes, type Mesh, roundedToFloat32, triangleCount } from './solid/mesh';
export {
  DEFAULT_CHORD_ERROR,
  type TubeShape,
  tubeMeshVolume,
  tubeObstacle,
  tubeSolid,
  tubeVolume,
  tubeVolumeDeficit,
} from './solid/tube';
export { frustumSolid } from './solid/frustum';
export { meshCentroid } from './solid/centroid';
export { boundsOf, type MeshReport, measureMesh, meshProblems, partProblems, shellCount } from './check/mesh';
export { type Crossing, meshCrossings } from './check/selfCrossing';

// Parts: every piece of metal, each a closed shell in a frame of its own
export { headerParts, type PartProgress } from './parts/headerParts';
export {
  type FlatPart,
  type HeaderPart,
  type Made,
  PART_KINDS,
  type PartKind,
  type PartOwner,
  type PartRemark,
  partsNamed,
} from './parts/part';
export { fromFrame, type PartFrame, partFrame, placePoints, placedMesh } from './parts/place';
export { cutObstacle, startTrim, stepDepthAt, trimmedLine, tubeLine } from './parts/tubeParts';
export { collectorParts } from './collector/collectorParts';
export { type CollectorPlan, collectorPlan } from './collector/plan';
export { type Stub, stubs } from './collector/stubs';

// From a port's opening to its tube
export { type AreaSchedule, areaSchedule } from './transition/areaSchedule';
export { ATTACHED_HALF_ANGLE } from './transition/flowWarnings';

// Flanges: plates drawn flat, and as solids
export { flangeParts } from './flange/flangeParts';
export { type FlangePlan, flangePlan, type PlateHole, type PlatePlan } from './flange/plan';
export { plateSolid, plateVolume } from './flange/plateSolid';
export { openingDiscs } from './flange/seats';
export { isStud } from './flange/stud';

// Plane curves of straights and arcs
export { cutLoop } from './plane/cut';
export { type Disc, distanceToHull, grown, hullArcs, hullLoop } from './plane/discs';
export { hug } from './plane/hug';
export { isInLoop, selfCrossing } from './plane/inside';
export { edgeGap, leastGap, meetings, pointOnEdge } from './plane/meet';
export {
  type Bounds2,
  circleLoop,
  type Edge,
  edges,
  type Loop,
  loopArea,
  loopBounds,
  loopLength,
  movedLoop,
  type Point2,
  polygonLoop,
  reversedLoop,
  sampleLoop,
} from './plane/loop';

export { type Circle, fitCircle } from './plane/fitCircle';
export { type FitOptions, type Fitted, fitLoop } from './plane/fitLoop';
export { distanceToEdge, distanceToLoop, isInPolygon, loopCentre } from './plane/within';

// A flange's outline from a drawing or a scan
export { type Contour, contours } from './trace/contours';
export { type Raster, TraceError, usualThreshold } from './trace/raster';
export {
  largestRegion,
  type Region,
  type Scale,
  type Shade,
  scaleOf,
  speckOf,
  type Traced,
  type TraceOptions,
  traceRaster,
} from './flange/trace';

export { openingAt } from './flange/fittedOpening';
export { type FramedFlange, framedFlange, intoFrame, outOfFrame } from './flange/flangeFrame';
export {
  type PlacedDrawing,
  type PlacedOpening,
  type PlacingOptions,
  placeDrawing,
  rigidWords,
  type TakeOptions,
  takeDrawing,
} from './flange/imported';

// Cuts unrolled: what paper wrapped round a tube shows
export { collectorCuts, stubCut } from './unroll/collectorCuts';
export { type Extremes, extremes } from './unroll/extremes';
export { headerCuts } from './unroll/headerCuts';
export { type MitreOptions, mitreCut, type PieceLength, type SegmentedBend, segmentedBend } from './unroll/mitre';
export { copeOrdinate, type SaddleOptions, saddleCut } from './unroll/saddle';
export type { WrapCut } from './unroll/wrapCut';

// From nothing: an engine form to a first header
export { usualSurroundings } from './draft/bankParts';
export { type Draft, type DraftOptions, draftHeader } from './draft/draftHeader';
export { type JoinedFirst, type Joining, joiningOf } from './draft/joining';
export { type MirrorOptions, mirrorBank } from './draft/mirrorBank';
export { chosenCylinders, type Opposite, usualOpposite } from './draft/mirrorCylinders';
export { engineWords } from './draft/mirrorEngine';
export type { Plane } from './draft/reflect';

// Two versions of a design
export type { Change } from './compare/changes';
export { type Comparison, compareDesigns } from './compare/compareDesigns';
export type { RunnerMeasures } from './compare/measures';

// The space it must fit: gaps, tools, getting it off, sensors
export { hotGrowth, type Motion, motionOf } from './motion/motion';
export { type Expansion, expansion, growth } from '../shared/stock/expansion';
export { type GapOptions, gapReport } from './gaps/gapReport';
export { gapProfiles, type ProfileOptions } from './gaps/gapProfile';
export type { GapEntry, GapProfile, GapReport, MotionPose } from './gaps/report';
export { accessReport } from './reach/accessReport';
export { type KeepOut, keepOuts } from './reach/keepOuts';
export { withWrapEnds } from './reach/wrapEnds';
export { wrapPlans } from './reach/wrapPlans';
export type { AccessEntry, AccessReport, BareReason, Reach, ToolSolid, ToolTry, WrapPlan } from './reach/report';
export { type RemovalOptions, removalReport } from './removal/removal';
export type { JointAdvice, RemovalPiece, RemovalPose, RemovalReport } from './removal/report';
export type { SensorEntry, SensorRemark } from './sensor/report';
export { sensorReport } from './sensor/sensors';
export type { FlatTree } from './clearance/buildTree';
export { adoptTree, flatTreeOf, hasTree, knownTree } from './clearance/flatTrees';
export type { Placement } from './clearance/triangleTree';
export { Numbering } from './mesh/numbering';
export { type PosedByPoints, poseFromPoints, type ThreePoints } from './mesh/poseFromPoints';
export { MM_PER_UNIT, soupBox, unitOf } from './mesh/soup';
export { cropSoup } from './mesh/cropSoup';
export { thinSoup } from './mesh/thinSoup';
export { type RayHit, rayHit } from './clearance/rayTree';
