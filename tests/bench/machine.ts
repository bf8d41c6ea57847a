import { cpus, loadavg, totalmem } from 'node:os';

/** The machine a figure belongs to, in one line. */
export function describeMachine(): string {
  const processors = cpus();
  const memory = Math.round(totalmem() / 1e9);
  const load = loadavg()[0]?.toFixed(1) ?? '?';
  return `${processors[0]?.model.trim() ?? 'unknown processor'}, ${processors.length} cores, ${memory} GB, Node ${process.version}, load ${load} at the start`;
}
