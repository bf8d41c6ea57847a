/** What Next hands a page as its query. */
export type Query = Record<string, string | string[] | undefined>;

/** The first value of a query parameter, trimmed; undefined where it is absent or blank. */
export function firstOf(query: Query, name: string): string | undefined {
  const value = query[name];
  const text = (Array.isArray(value) ? value[0] : value)?.trim();
  return text === '' ? undefined : text;
}

/** `{ search: 'A b', page: 1 }` on `/jobs` as `/jobs?search=A+b&page=1`; absent values are left out. */
export function address(path: string, query: Record<string, string | number | undefined>): string {
  const parameters = new URLSearchParams();
  for (const [name, value] of Object.entries(query))
    if (value !== undefined) parameters.set(name, String(value));
  const text = parameters.toString();
  return text === '' ? path : `${path}?${text}`;
}

export const jobAddress = (job: string) => `/jobs/${encodeURIComponent(job)}`;
export const technicianAddress = (code: string) => `/technicians/${encodeURIComponent(code)}`;
export const gaugeAddress = (tag: string) => `/gauges/${encodeURIComponent(tag)}`;
export const sheetAddress = (sheet: string) => `/sheets/${encodeURIComponent(sheet)}`;

/** The anchor of a round within its job's page. */
export const roundAnchor = (stage: string, attempt: number) => `${stage}-${attempt}`;

/** The anchor of a setup within its job's page; labels may hold any character, anchors may not. */
export const setupAnchor = (setup: string) => `setup-${encodeURIComponent(setup).replaceAll('%', '_')}`;

/** The evidence behind the verdicts of a round, or one place on that page. */
export function evidenceAddress(job: string, stage: string, attempt: number, anchor?: string): string {
  const page = address(`${jobAddress(job)}/evidence`, { round: roundAnchor(stage, attempt) });
  return anchor === undefined ? page : `${page}#${anchor}`;
}

/** The anchor of a height within the evidence of its round. */
export function heightAnchor({ setup, point, side }: { setup: string; point: string; side: string }): string {
  return `height-${encodeURIComponent(`${setup} ${point} ${side}`).replaceAll('%', '_')}`;
}

/** A setup on its job's page, with its readings. */
export function setupPlace({ job, stage, attempt, setup }: SetupName): string {
  return `${jobAddress(job)}#${setupAnchor(`${roundAnchor(stage, attempt)} ${setup}`)}`;
}

interface SetupName {
  job: string;
  stage: string;
  attempt: number;
  setup: string;
}
