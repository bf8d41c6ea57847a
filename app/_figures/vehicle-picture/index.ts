/** The picture of a vehicle's round, from plain data to shapes that pages, files and paper draw alike. */
export { moved } from './key';
export { layoutOf } from './measure';
export { NARROW, scaleWords, vehicleDrawing, WIDE } from './vehicle-drawing';
export type { Scene, SceneHeight, SceneLength, ScenePin, ScenePoint, SceneRound } from './scene';
