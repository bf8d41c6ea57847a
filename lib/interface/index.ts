/** The HTTP interface for programs: a door of its own, which a token opens to one shop and to what its scopes say. */
export { admitToken, REQUESTS } from './admit-token';
export { byteStream } from './bytes';
export { jobDocument } from './job';
export { receiveMeasurements, type WriteDown } from './measurements/receive-measurements';
export { sendMeasurements } from './measurements/send-measurements';
export { isReady, shopMetrics } from './metrics';
export { openApi } from './openapi';
export { json, problem } from './problem';
export { listReports, reportNow, reportOf } from './reports';
