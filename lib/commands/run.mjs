/** Runs another program of this installation, its output passed through. */
import { spawn } from 'node:child_process';
import { fileURLToPath } from 'node:url';

export const root = fileURLToPath(new URL('../..', import.meta.url));

/** @type {Set<import('node:child_process').ChildProcess>} */
const running = new Set();

/**
 * @param {string} program
 * @param {readonly string[]} args
 * @param {NodeJS.ProcessEnv} [env] in addition to the present one
 * @param {'inherit' | 'pipe'} [output]
 * @returns {Promise<{ code: number, output: string }>} output only where it was piped
 */
export function run(program, args, env = {}, output = 'inherit') {
  return new Promise((resolve, reject) => {
    const child = spawn(program, args, {
      cwd: root,
      env: { ...process.env, NEXT_TELEMETRY_DISABLED: '1', ...env },
      stdio: ['ignore', output, output],
    });
    running.add(child);
    let said = '';
    child.stdout?.on('data', (text) => (said += text));
    child.stderr?.on('data', (text) => (said += text));
    child.on('error', reject);
    child.on('close', (code, signal) => {
      running.delete(child);
      resolve({ code: code ?? (signal === null ? 1 : 128), output: said });
    });
  });
}

/**
 * Runs a script of this installation by the present Node.
 * @param {readonly string[]} args
 * @param {NodeJS.ProcessEnv} [env]
 * @param {'inherit' | 'pipe'} [output]
 */
export const node = (args, env, output) => run(process.execPath, args, env, output);

/** Passes a stop on to whatever runs, so that nothing is orphaned. */
export function stopChildrenWithUs() {
  for (const signal of /** @type {const} */ (['SIGINT', 'SIGTERM', 'SIGHUP'])) {
    process.once(signal, () => {
      for (const child of running) child.kill('SIGTERM');
      if (running.size === 0) process.exit(0);
    });
  }
}
