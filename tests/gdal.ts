import { execFileSync, spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { isThere } from './debian.ts';

/** Where GDAL's own checker of GeoPackages lies in Debian's python3-gdal, which gdal-bin brings with it. */
const VALIDATOR = '/usr/lib/python3/dist-packages/osgeo_utils/samples/validate_gpkg.py';

/** The tools of GDAL (MIT licence), written by others and sharing no code with us; installed on Debian when root. */
export function needGdal(): void {
  if (!isThere('ogrinfo', 'gdal-bin'))
    throw new Error('These tests read our files by GDAL. Install it (on Debian: apt-get install gdal-bin).');
}

/** What a tool of GDAL prints; where it fails, so does this. */
export function gdal(tool: string, ...args: string[]): string {
  return execFileSync(tool, args, {
    encoding: 'utf8',
    stdio: ['ignore', 'pipe', 'pipe'],
    maxBuffer: 2 ** 28,
  });
}

/** Every fault that the checker finds in a GeoPackage; empty where it conforms. */
export function faultsOfGeoPackage(file: string): string {
  if (!existsSync(VALIDATOR)) throw new Error(`GDAL's checker of GeoPackages is not at ${VALIDATOR}.`);
  const { status, stdout, stderr } = spawnSync('python3', [VALIDATOR, file], { encoding: 'utf8' });
  return status === 0 ? '' : `${stdout}${stderr}` || `status ${status}`;
}

export function scratchFolder(): string {
  return mkdtempSync(join(tmpdir(), 'rutline-'));
}
