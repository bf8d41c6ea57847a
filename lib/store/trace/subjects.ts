const parts = (...named: [what: string, name: string | number][]) =>
  named.map(([what, name]) => `${what} ${name}`).join(SEPARATOR);

const SEPARATOR = ', ';
/** Comes after everything that begins with the separator. */
const AFTER = ',!';

/** What the trace calls things: by names that hold no person's data. */
export const subjectOf = {
  person: (row: number) => `person ${row}`,
  file: (row: number) => `file ${row}`,
  gauge: (tag: string) => `gauge ${tag}`,
  sheet: (name: string) => `sheet ${name}`,
  shop: 'shop',
  trial: (row: number) => `trial ${row}`,
  trialReading: (row: number, run: number, repeat: number) =>
    parts(['trial', row], ['run', run], ['reading', repeat]),
  job: (job: string) => parts(['job', job]),
  round: (job: string, stage: string, attempt: number) =>
    parts(['job', job], ['round', `${stage} ${attempt}`]),
  side: (job: string, setup: string, side: string) =>
    parts(['job', job], ['setup', setup], ['side', side === '' ? 'none' : side]),
  reading: (job: string, setup: string, dimension: string, repeat: number) =>
    parts(['job', job], ['setup', setup], ['of', dimension], ['reading', repeat]),
};

/** The subjects of a job and of anything in it lie between these two, in the order of bytes. */
export const subjectsOfJob = (job: string) => {
  const own = subjectOf.job(job);
  return { own, from: `${own}${SEPARATOR}`, below: `${own}${AFTER}` };
};
