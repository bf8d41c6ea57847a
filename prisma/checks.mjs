/**
 * What the database itself refuses, beyond types, keys and references. A new migration takes these
 * into every CREATE TABLE, for both databases.
 */
const words = (column, ...values) => `"${column}" IN (${values.map((value) => `'${value}'`).join(', ')})`;
const count = (column, least = 0) => `"${column}" >= ${least}`;
const within = (column, low, high) => `"${column}" BETWEEN ${low} AND ${high}`;
const said = (column) => `length("${column}") > 0`;

const stage = (column) => words(column, 'before', 'after');
const side = words('side', '', 'L', 'R');
const section = words('section', 'front', 'center', 'rear');
const cause = words('cause', 'neither', 'gauge', 'body', 'both');
/** No length on a vehicle is longer than a hundred metres; infinity is caught as well. */
const millimetres = (column) => within(column, -100000, 100000);

export const CHECKS = {
  Shop: [said('name'), said('timeZone'), `"defaultTolerance" > 0`, count('inputsVersion')],
  MissCost: [within('cost', 3, 99)],
  Person: [said('code'), words('role', 'technician', 'trainer', 'manager')],
  Gauge: [
    said('tag'),
    words('kind', 'tram', 'digital-tram', 'tracking', 'centering', 'strut', 'tape'),
    words('state', 'in-service', 'out-of-service', 'retired'),
    within('fixedMark', 0, 100000),
  ],
  GaugeVerification: [
    words('kind', 'reference-length', 'check-standard', 'looked-at', 'reported-dropped'),
    millimetres('reference'),
    within('uncertainty', 0, 1000),
    millimetres('error'),
  ],
  Sheet: [said('name')],
  SheetPoint: [said('letter'), side, section, millimetres('station'), within('halfWidth', 0, 100000)],
  SheetRevision: [count('revision', 1)],
  BayRound: [said('job'), stage('stage'), count('attempt', 1), millimetres('clearance')],
  BayEntry: [
    said('key'),
    said('device'),
    count('sequence', 1),
    words('kind', 'equipment', 'hang', 'read', 'correct', 'skip', 'resume', 'settle', 'finish'),
  ],
  Dimension: [
    said('point'),
    words('quantity', 'length', 'height', 'centerline'),
    side,
    `("quantity" = 'height') = ("side" <> '')`,
    section,
    millimetres('station'),
    `"quantity" = 'length' OR "station" IS NOT NULL`,
    millimetres('nominal'),
    within('tolerance', 0, 100000),
    `"named" = CASE WHEN "quantity" = 'length' THEN "nominal" ELSE 0 END`,
  ],
  Job: [
    said('number'),
    stage('lastStage'),
    count('lastAttempt', 1),
    count('roundCount', 1),
    count('setupCount', 1),
    count('readingCount', 1),
    `"lastReadAt" >= "openedAt"`,
  ],
  Round: [stage('stage'), count('attempt', 1), millimetres('clearance')],
  Setup: [said('label')],
  Observation: [
    count('n'),
    count('excluded'),
    millimetres('mean'),
    millimetres('deviation'),
    count('ss'),
    `"n" > 1 OR "ss" = 0`,
    cause,
  ],
  Reading: [
    count('repeat', 1),
    count('revision', 1),
    millimetres('value'),
    count('line', 1),
    `"fileId" IS NOT NULL OR "personId" IS NOT NULL`,
    `("fileId" IS NULL) = ("line" IS NULL)`,
    `("personId" IS NULL) = ("shopId" IS NULL)`,
    `"revision" = 1 OR ("reason" IS NOT NULL AND ${said('reason')} AND "personId" IS NOT NULL)`,
  ],
  RecheckOutcome: [side, cause],
  LoadedFile: [`length("sha256") = 64`, count('lines'), count('added'), count('alreadyThere')],
  JobOutcome: [
    count('out'),
    `"controlled" >= "out"`,
    `"frontControlled" >= "frontOut" AND "centerControlled" >= "centerOut" AND "rearControlled" >= "rearOut"`,
    `"right" IS NULL OR "controlled" > 0`,
    count('startOut'),
    within('startLargest', 0, 100000),
  ],
  ShopFit: [count('inputsVersion')],
  FitAnswer: [said('question')],
  RoundVerdict: [within('pZeroMisset', 0, 1), within('maxGauge', 0, 1.000001)],
  HeightVerdict: [
    ...['pNeither', 'pGauge', 'pBody', 'pBoth'].map((column) => within(column, 0, 1.000001)),
    `abs("pNeither" + "pGauge" + "pBody" + "pBoth" - 1) < 0.000001`,
  ],
  RoundProof: [count('format', 1)],
  HeightProof: [
    said('month'),
    ...['pNeither', 'pGauge', 'pBody', 'pBoth'].map((column) => within(column, 0, 1.000001)),
    `abs("pNeither" + "pGauge" + "pBody" + "pBoth" - 1) < 0.000001`,
    words('proved', 'neither', 'gauge', 'body', 'both'),
    words('by', 'rehang', 'recorded'),
  ],
  JobShare: [count('jobVersion', 1), said('madeBy')],
  Trial: [said('name')],
  TrialReading: [count('run', 1), count('repeat', 1), millimetres('value')],
  Trace: [words('via', 'page', 'command', 'interface', 'program'), said('action'), said('kind')],
  ApiToken: [said('name'), `length("digest") = 64`],
  ReportSchedule: [words('every', 'day', 'week', 'month'), within('hour', 0, 23)],
  User: [`length("username") >= 3`],
  Invitation: [`length("digest") = 64`, `"expiresAt" > "createdAt"`],
};

/** Rows of these are only ever added: a trigger refuses any other change, whoever asks for it. */
export const APPEND_ONLY = ['Reading', 'Trace', 'SheetRevision', 'BayEntry'];

/** Indexes of a few rows of a table, which the models file has no words for: those that the question is about. */
export const PARTIAL = {
  Observation: `CREATE INDEX "Observation_excluded" ON "Observation"("setupId") WHERE "excluded" > 0;`,
};

/** Tables that SQLite keeps in the order of their key, without a second copy of it. */
export const CLUSTERED = ['JobTechnician', 'Observation', 'Reading', 'HeightVerdict', 'HeightProof', 'TrialReading', 'SheetRevision'];
