/**
 * The dimension sheet as people enter it: rows, checks, and what it comes to as points and controlled dimensions.
 * Holds nothing that a browser lacks; the sheet file is in '@/lib/measure/sheet-file'.
 */
export * from './columns';
export * from './content';
export { FEATURES, STRUT_TOWER, type Feature } from './features';
export * from './rows';
export { sidesOf } from './sides';
export { expandRows } from './expand';
export { rowsOf } from './rows-of';
export { fitOf, kindOf, type ExpectedLength, type FitAs, type LengthFit } from './fit';
export { MOST_TEXT, readTyped, typedOf, type ReadTyped } from './typed';
export { featureFrom, kindFrom, sectionFrom, sideFrom, yesFrom } from './typed-words';
export { checkRows, isFault, remarksAt } from './check';
export { REMARK_CODES, type Remark, type RemarkCode, type RemarkPlace, type RemarkValue } from './remark';
export { amended } from './amended';
export { sheetChanges, type SheetChange } from './changes';
export { matchDimensions } from './match';
