import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { parse, stringify } from 'yaml';
import { beside } from '../../../../../backend/src/connections/site-files/include-reader';
import { lineText } from '../../../../../backend/src/connections/site-files/line-fault';
import { readSiteWithHash, siteFromText } from '../../../../../backend/src/connections/site-files/read-site-file';
import { shippedTemplates } from '../../../../../backend/src/connections/site-files/shipped-templates';
import { temporaryFolder, type TemporaryFolder } from '../../../../helpers/temporary-folder';

const small = readFileSync(new URL('../../../../helpers/sites/small-site.yaml', import.meta.url), 'utf8');

/** The small site with a third unit, whose points come from a sensor set. */
function withSet(name: string): string {
  const document = parse(small) as { templates: { typeM: object }; units: object };
  const chosen = { ...document.templates.typeM, template: name, servers: { s1: { branch: 'r1' } } };
  return stringify({
    ...document,
    include: [name],
    templates: { ...document.templates, chosen },
    units: { ...document.units, m3: { name: 'Unit three', hall: 'north', template: 'chosen' } },
  });
}

const faultsOf = (text: string, siteFile: string): readonly string[] => {
  const read = siteFromText(text, beside(siteFile));
  return read.ok ? [] : read.fault.map((fault) => lineText('site.yaml', fault));
};

describe('sensor sets that come with Ebbline', () => {
  it.each([...shippedTemplates.keys()])('%s gives a unit its points, from one object a unit', (name) => {
    const read = siteFromText(withSet(name));
    if (!read.ok) throw new Error(read.fault.map((fault) => lineText('site.yaml', fault)).join('\n'));
    const { site } = read.value;
    const plan = site.topics.get('small/north/m3');
    expect(plan).toMatchObject({ format: 'json', timePath: ['time'], timeForm: 'iso' });
    for (const { path, slot } of plan?.bindings ?? []) expect(path).toEqual(['values', site.slots.pointId[slot]]);
  });

  it('grow from poor over usual to rich', () => {
    const points = (name: string): number => {
      const read = siteFromText(withSet(name));
      return read.ok ? (read.value.site.topics.get('small/north/m3')?.bindings.length ?? 0) : 0;
    };
    const counts = ['poor', 'usual', 'rich'].map(points);
    expect(counts[0]).toBeGreaterThan(5);
    expect(counts[1]).toBeGreaterThan(counts[0] ?? 0);
    expect(counts[2]).toBeGreaterThan(40);
  });
});

describe('files beside the site file', () => {
  let folder: TemporaryFolder;
  beforeAll(async () => {
    folder = await temporaryFolder();
  });
  afterAll(() => folder.stop());
  const siteFile = (name: string): string => {
    mkdirSync(join(folder.path, name), { recursive: true });
    return join(folder.path, name, 'site.yaml');
  };
  const put = (file: string, name: string, text: string): void => writeFileSync(join(file, '..', name), text);
  const including = (...names: string[]): string =>
    small.replace('templates:\n', `include: [${names.join(', ')}]\ntemplates:\n`);

  it('give templates, and their faults are told with their own name and line', () => {
    const file = siteFile('faults');
    put(file, 'racks.yaml', 'templates:\n  racks:\n    template: typeM\n    ratedFlow: much\n');
    expect(faultsOf(including('racks.yaml'), file)).toEqual([
      expect.stringMatching(/^racks\.yaml:4: templates\.racks\.ratedFlow: expected a number/),
    ]);
    put(file, 'racks.yaml', 'templates:\n  typeM: {}\n');
    expect(faultsOf(including('racks.yaml'), file)).toEqual([
      expect.stringMatching(/^racks\.yaml:2: templates\.typeM: the site file has a template "typeM" already/),
    ]);
    put(file, 'racks.yaml', 'templates:\n  racks: {}\nunits: {}\n');
    expect(faultsOf(including('racks.yaml'), file)).toEqual([
      expect.stringMatching(/^racks\.yaml:3: units: .*templates only/),
    ]);
    put(file, 'racks.yaml', 'templates: [\n');
    expect(faultsOf(including('racks.yaml'), file)[0]).toMatch(/^racks\.yaml:\d+:\d+: this is not YAML/);
  });

  it.each(['../site.yaml', '/etc/hostname', 'sub/racks.yaml', '.hidden.yaml', 'racks', '..', 'C:\\racks.yaml'])(
    'are never read from anywhere else: %s',
    (name) => {
      const faults = faultsOf(including(`'${name}'`), siteFile('paths'));
      expect(faults).toEqual([
        expect.stringMatching(/^site\.yaml:\d+: include\.0: expected rich, usual, poor, or the name of a file beside/),
      ]);
    },
  );

  it('are refused under any name that is not one plain file name', () => {
    const read = beside(siteFile('any'));
    fc.assert(
      fc.property(fc.string(), (name) => {
        const found = read(name);
        expect(found.ok).toBe(shippedTemplates.has(name));
      }),
    );
  });

  it('count for the hash of the content, and are missed where they are gone', async () => {
    const file = siteFile('hash');
    put(file, 'site.yaml', including('racks.yaml'));
    const missing = await readSiteWithHash(file);
    expect(missing.result.ok).toBe(false);
    put(file, 'racks.yaml', 'templates:\n  racks: {}\n');
    const first = await readSiteWithHash(file);
    expect(first.result.ok).toBe(true);
    put(file, 'racks.yaml', 'templates:\n  racks: { ratedFlow: 3 L/min }\n');
    const second = await readSiteWithHash(file);
    const hashes = [missing, first, second].map(({ contentHash }) => contentHash);
    expect(new Set(hashes).size).toBe(3);
    expect((await readSiteWithHash(file)).contentHash).toBe(second.contentHash);
  });
});
