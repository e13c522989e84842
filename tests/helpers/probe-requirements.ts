import { execFile } from 'node:child_process';
import { access, constants } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';

export const requirementNames = [
  'mosquitto',
  'influxdb',
  'chromium',
  'python-iapws',
  'python-fluids',
  'data',
  'mounts',
  'unshare',
  'npm-audit',
  'pictures',
] as const;
/** Something outside the project that some tests need; nothing that ships needs it. */
export type Requirement = (typeof requirementNames)[number];

export interface Found {
  /** Path of the program or folder; null where it is not here. */
  readonly path: string | null;
  /** What brings it. */
  readonly bring: string;
}

export type Requirements = Readonly<Record<Requirement, Found>>;

const debian = (packageName: string): string => `apt-get install --no-install-recommends ${packageName}`;
const run = promisify(execFile);

/** Looks once for everything; the config of the test run keeps the answer for all workers. */
export async function probeRequirements(): Promise<Requirements> {
  const [mosquitto, influxdb, chromium, iapws, fluids, data, unshare, mounts] = await Promise.all([
    firstThatRuns(['/usr/sbin/mosquitto', 'mosquitto'], ['-h']),
    firstThatRuns(['/usr/bin/influxd', 'influxd'], ['version']),
    findBrowser(),
    pythonWith('iapws.iapws97'),
    pythonWith('fluids'),
    readableFolder(fileURLToPath(new URL('../../../shared/data', import.meta.url))),
    networkOfItsOwn(),
    mountsOfItsOwn(),
  ]);
  return {
    mosquitto: { path: mosquitto, bring: debian('mosquitto') },
    influxdb: { path: influxdb, bring: debian('influxdb') },
    chromium: { path: chromium, bring: `${debian('chromium')} (or libnss3 and libnspr4 for the packaged one)` },
    'python-iapws': { path: iapws, bring: debian('python3-iapws') },
    'python-fluids': { path: fluids, bring: debian('python3-fluids') },
    data: { path: data, bring: 'a folder ../shared/data beside the project with the recorded data sets' },
    mounts: { path: mounts, bring: `${debian('util-linux')}, and root or user namespaces that may mount` },
    unshare: { path: unshare, bring: `${debian('util-linux iproute2')}, and root or user namespaces` },
    // Takes a second and the network: the one test that needs it looks itself (`foundNow`).
    'npm-audit': { path: null, bring: 'a package registry within reach that answers npm audit' },
    // Takes a browser: the one test that needs it looks itself, too.
    pictures: {
      path: null,
      bring:
        'the fonts with which frontend/pictures were drawn (letters.png there), or `npm run pictures`, which draws all anew',
    },
  };
}

/** `EBBLINE_TEST_REQUIRE=mosquitto,chromium`: what must be here, so that its absence fails. */
export function requiredNames(value: string | undefined): readonly Requirement[] {
  const names = (value ?? '').split(',').map((name) => name.trim());
  return names
    .filter((name) => name !== '')
    .map((name) => {
      const known = requirementNames.find((requirement) => requirement === name);
      if (known === undefined) {
        throw new Error(`EBBLINE_TEST_REQUIRE names '${name}'; known are ${requirementNames.join(', ')}`);
      }
      return known;
    });
}

/** Stands in the title of a suite that was not run, so that the report can count by what was absent. */
export const needsMark = (absent: readonly Requirement[]): string => `[needs ${absent.join(', ')}]`;

async function firstThatRuns(programs: readonly string[], args: readonly string[]): Promise<string | null> {
  for (const program of programs) if (await starts(program, args)) return program;
  return null;
}

/** mosquitto -h exits 3: that it can be started is enough. */
async function starts(program: string, args: readonly string[]): Promise<boolean> {
  try {
    await run(program, [...args], { timeout: 20_000 });
    return true;
  } catch (fault) {
    return typeof (fault as { code?: unknown }).code === 'number' && (fault as { code: number }).code < 126;
  }
}

/** Debian's python3, where it can really import the module; another python3 has other packages. */
async function pythonWith(module: string): Promise<string | null> {
  const python = '/usr/bin/python3';
  try {
    await run(python, ['-c', `import ${module}`], { timeout: 60_000 });
    return python;
  } catch {
    return null;
  }
}

/** Can a program be run with no network but its own loopback? Then the name of what does it (util-linux). */
async function networkOfItsOwn(): Promise<string | null> {
  try {
    await run('unshare', ['-rn', 'ip', 'link', 'set', 'lo', 'up'], { timeout: 20_000 });
    return 'unshare';
  } catch {
    return null;
  }
}

/** Can a program be run with mounts that it alone sees, made and undone from outside? Then the name of what does it (util-linux). */
async function mountsOfItsOwn(): Promise<string | null> {
  try {
    await run('unshare', ['-rm', 'mount', '-t', 'tmpfs', '-o', 'size=1m', 'tmpfs', tmpdir()], { timeout: 20_000 });
    await run('nsenter', ['--version'], { timeout: 20_000 });
    return 'unshare';
  } catch {
    return null;
  }
}

async function findBrowser(): Promise<string | null> {
  const installed = await firstThatRuns(['/usr/bin/chromium', '/usr/bin/chromium-browser'], ['--version']);
  return installed ?? (await packagedBrowser());
}

/** The browser inside an npm package: unpacks to the temp folder; Linux only. */
async function packagedBrowser(): Promise<string | null> {
  if (process.platform !== 'linux') return null;
  try {
    createRequire(import.meta.url).resolve('@sparticuz/chromium/package.json');
    const { default: chromium } = await import('@sparticuz/chromium');
    const path = await chromium.executablePath();
    return (await starts(path, ['--version'])) ? path : null;
  } catch {
    return null;
  }
}

async function readableFolder(path: string): Promise<string | null> {
  try {
    await access(path, constants.R_OK);
    return path;
  } catch {
    return null;
  }
}
