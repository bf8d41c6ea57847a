import { z } from 'zod';

/** Where a manager of a shop comes in, and what there is to open. */
export const Shop = z.object({
  invitation: z.string(),
  technician: z.string(),
  job: z.string(),
  sheet: z.string(),
});
export type Shop = z.infer<typeof Shop>;

/** Every kind of page with figures; those of one job, hand and sheet by one that the shop has. */
export const pagesOf = ({ technician, job, sheet }: Shop): [name: string, path: string][] => [
  ['overview', '/'],
  ['jobs', '/jobs'],
  ['job', `/jobs/${job}`],
  ['evidence', `/jobs/${job}/evidence?round=after-1`],
  ['readings', `/jobs/${job}/readings`],
  ['rates', '/rates'],
  ['rates by month', `/rates?by=month&technician=${technician}`],
  ['jobs of a rate', `/rates/jobs?by=technician&group=${technician}`],
  ['signals', '/rates/signals'],
  ['what if', '/what-if'],
  ['technicians', '/technicians'],
  ['hand', `/technicians/${technician}`],
  ['training', '/training'],
  ['habits', '/habits'],
  ['habit', `/habits/low-hanger?technician=${technician}`],
  ['gauges', '/gauges'],
  ['sheets', '/sheets'],
  ['sheet', `/sheets/${sheet}`],
  ['bay', '/bay'],
  ['trials', '/trials'],
  ['calibration', '/calibration'],
  ['trace', '/settings/trace'],
];
