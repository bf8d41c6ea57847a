import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { z } from 'zod';
import { measure, measureOurs, runProcess } from '../run-process';
import { writeReadings } from './write-readings';

const Ours = z.object({
  collapse: z.number(),
  total: z.number(),
  megabytes: z.number(),
  criterion: z.number(),
  sds: z.record(z.string(), z.number()),
});
const Lme4 = z.object({
  seconds: z.number(),
  version: z.string(),
  criterionDifference: z.number().nullable(),
});
const Passes = z.object({ first: z.number(), middle: z.number(), version: z.string().optional() });

interface Size {
  readings: number;
  technicians: number;
  /** Least ratios aimed at: against lme4 on the readings, and on collapsed data. */
  targets: { readings: number | null; collapsed: number | null };
  /** lme4 on the readings takes minutes: only with --long. */
  long: boolean;
}

const GAUGES = 20;
const SIZES: Size[] = [
  { readings: 100_000, technicians: 12, targets: { readings: 50, collapsed: null }, long: false },
  { readings: 1_000_000, technicians: 12, targets: { readings: 500, collapsed: 50 }, long: true },
  { readings: 1_000_000, technicians: 200, targets: { readings: 250, collapsed: null }, long: true },
];

const here = (name: string) => new URL(name, import.meta.url);

/** REML of readings ~ dimension + technician + gauge + setup, against lme4; the collapse pass against DuckDB. */
export async function benchVarianceComponents(say: (line: string) => void, long: boolean): Promise<void> {
  const r = await runProcess('Rscript', ['-e', 'cat(as.character(packageVersion("lme4")))']);
  say(
    r === null
      ? 'lme4 is not installed (Rscript with the package lme4): its ratios are left out.'
      : `lme4 ${r}`,
  );
  const folder = mkdtempSync(join(tmpdir(), 'rehang-bench-'));
  try {
    for (const size of SIZES) await benchSize(size, folder, r !== null, long, say);
    await benchCollapse(folder, say);
  } finally {
    rmSync(folder, { recursive: true });
  }
}

async function benchSize(
  size: Size,
  folder: string,
  lme4: boolean,
  long: boolean,
  say: (line: string) => void,
) {
  const { readings, technicians, targets } = size;
  const args = [readings, technicians, GAUGES].map(String);
  const runs: z.infer<typeof Ours>[] = [];
  for (let i = 0; i < 3; i++) runs.push(Ours.parse(await measureOurs(here('fit-once.ts'), args)));
  const [, ours] = runs.sort((a, b) => a.total - b.total);
  if (ours === undefined) return;
  say(`${readings.toLocaleString('en')} readings, ${technicians} technicians, ${GAUGES} gauges`);
  say(
    `  ours        ${ours.total.toFixed(0)} ms (collapse ${ours.collapse.toFixed(0)}), ${ours.megabytes.toFixed(0)} MB; middle of three fresh processes`,
  );
  if (!lme4) return;
  writeReadings(folder, readings, technicians, GAUGES);
  const sds = ['dimension', 'technician', 'gauge', 'setup', 'residual']
    .map((name) => ours.sds[name])
    .join(',');
  const run = async (kind: 'readings' | 'collapsed', target: number | null) => {
    const script = here('lme4.R').pathname;
    const found = Lme4.nullable().parse(
      await measure('Rscript', [script, folder, String(readings), kind, sds, String(ours.criterion)]),
    );
    if (found === null) return say(`  lme4 on ${kind} failed`);
    const ratio = (found.seconds * 1000) / ours.total;
    const aim = target === null ? '' : `, aim ${target}`;
    const difference =
      found.criterionDifference === null
        ? ''
        : `; its criterion at our sds less ours: ${found.criterionDifference}`;
    say(
      `  lme4 on ${kind}  ${found.seconds.toFixed(1)} s: ${ratio.toFixed(0)} times ours${aim}${difference}`,
    );
  };
  await run('collapsed', targets.collapsed);
  if (size.long && !long) say('  lme4 on readings  left out: it takes minutes; npm run bench -- --long');
  else await run('readings', targets.readings);
}

async function benchCollapse(folder: string, say: (line: string) => void): Promise<void> {
  const readings = 1_000_000;
  const ours = Passes.parse(await measureOurs(here('collapse-once.ts'), [String(readings)]));
  say(`Collapse of ${readings.toLocaleString('en')} readings, one thread`);
  say(`  ours    first ${ours.first.toFixed(1)} ms, middle of eleven ${ours.middle.toFixed(1)} ms`);
  const python = process.env.BENCH_PYTHON ?? 'python3';
  if ((await runProcess(python, ['-c', 'import duckdb'])) === null) {
    return say(
      '  DuckDB is not installed (a Python with the package duckdb, BENCH_PYTHON names it): left out.',
    );
  }
  writeReadings(folder, readings, 12, GAUGES);
  const theirs = Passes.parse(
    await measure(python, [here('grouped-query.py').pathname, folder, String(readings)]),
  );
  say(
    `  DuckDB ${theirs.version ?? ''}  first ${theirs.first.toFixed(1)} ms, middle ${theirs.middle.toFixed(1)} ms: ` +
      `${(theirs.first / ours.first).toFixed(1)} and ${(theirs.middle / ours.middle).toFixed(1)} times ours, aim 1`,
  );
}
