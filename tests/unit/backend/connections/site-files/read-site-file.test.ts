import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readSiteFile, siteFromText } from '../../../../../backend/src/connections/site-files/read-site-file';
import { summarizeSite } from '../../../../../backend/src/connections/site-files/summarize-site';

const small = new URL('../../../../helpers/sites/small-site.yaml', import.meta.url);
const text = readFileSync(small, 'utf8');
const lineOf = (part: string, from = text): number => from.slice(0, from.indexOf(part)).split('\n').length;

function faultsOf(written: string) {
  const read = siteFromText(written);
  return read.ok ? [] : read.fault;
}

describe('siteFromText', () => {
  it('reads the small site and says what was understood', () => {
    const read = siteFromText(text);
    if (!read.ok) throw new Error(JSON.stringify(read.fault));
    expect(summarizeSite(read.value.site)).toMatch(
      /^Small test site, 120 m, UTC: 1 hall: North hall \(2 units\)\. 2 units, 2 gateways, 29 measured points and \d+ derived on 11 topics through 11 subscriptions\./,
    );
  });

  it.each([
    ['timeZone: UTC', 'timeZone: Nowhere', 'timeZone: Nowhere', 'site.timeZone'],
    ['suction: 62 m3/h', 'suction: 62 kPa', '{ pressure: 32 kPa', 'templates.typeM.vacuumSource.curve.1.suction'],
    ['path: flow, unit: L/min', 'path: flow, unit: kPa', 'loop.flow: {', 'units.m1.points.loop.flow.unit'],
    ['    hall: north', '    hall: south', '    hall: south', 'units.m1.hall'],
    ['returnInlet: 1.2 m', '# none', 'elevations:', 'templates.typeM.elevations.returnInlet'],
    ['  name: Small test site', '  nmae: Small test site', '  nmae:', 'site.nmae'],
  ])('tells line and key: %s → %s', (good, bad, where, key) => {
    const written = text.replace(good, bad);
    const fault = faultsOf(written).find((one) => one.key === key);
    expect(fault?.line).toBe(lineOf(where, written));
  });

  it('tells the line of what is no YAML, of keys given twice, and of nothing at all', () => {
    expect(faultsOf('site:\n  id: a\n  id: b\n')[0]).toMatchObject({
      line: 3,
      message: expect.stringMatching(/not YAML.*unique/s) as string,
    });
    expect(faultsOf('site: {id: a\nhalls')[0]?.message).toMatch(/not YAML/);
    expect(faultsOf('').length).toBeGreaterThan(0);
  });

  it('follows references (anchors) and stays bounded where they multiply', () => {
    const anchored = text.replace('altitude: 120 m', 'altitude: &h 120 m');
    expect(siteFromText(anchored).ok).toBe(true);
    let bomb = 'a0: &a0 [x, x, x, x, x, x, x, x, x, x]\n';
    for (let i = 1; i < 9; i += 1) bomb += `a${i}: &a${i} [${`*a${i - 1}, `.repeat(9)}*a${i - 1}]\n`;
    expect(faultsOf(bomb)[0]?.message).toMatch(/cannot be followed/);
  });

  it('lists faults in the order of lines', () => {
    const lines = faultsOf(
      text
        .replace('    hall: north', '    hall: south')
        .replace('timeZone: UTC', 'timeZone: Nowhere')
        .replace('hose: return', 'hose: left'),
    ).map(({ line }) => line);
    expect(lines.length).toBeGreaterThanOrEqual(3);
    expect(lines).toEqual([...lines].sort((a, b) => a - b));
  });
});

describe('readSiteFile', () => {
  it('tells of a file that cannot be read', async () => {
    const read = await readSiteFile('/nowhere/at/all.yaml');
    expect(!read.ok && read.fault[0]?.message).toMatch(/cannot be read \(ENOENT\)/);
  });
});
