import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { parse, stringify } from 'yaml';
import { lineText } from '../../../../../backend/src/connections/site-files/line-fault';
import { siteFromText } from '../../../../../backend/src/connections/site-files/read-site-file';
import { shippedTemplates } from '../../../../../backend/src/connections/site-files/shipped-templates';
import { summarizeSite } from '../../../../../backend/src/connections/site-files/summarize-site';

const textOf = (path: string): string => readFileSync(new URL(`../../../../../${path}`, import.meta.url), 'utf8');

/** What is said of a text: faults, or warnings. */
function saidOf(text: string): readonly string[] {
  const read = siteFromText(text);
  return (read.ok ? read.value.warnings : read.fault).map((one) => lineText('site.yaml', one));
}

/** The example site with a unit more, all of whose points come from a sensor set. */
function withSet(name: string): string {
  const document = parse(textOf('tests/helpers/sites/small-site.yaml')) as {
    templates: { typeM: object };
    units: object;
  };
  const chosen = { ...document.templates.typeM, template: name, servers: { s1: { branch: 'r1' } } };
  return stringify({
    ...document,
    include: [name],
    templates: { ...document.templates, chosen },
    units: { ...document.units, m3: { name: 'Unit three', hall: 'north', template: 'chosen' } },
  });
}

/** Only the rich set has a conductivity meter; which water it is in, and so which limits, depends on its treatment. */
const warningsOfSets: Readonly<Record<string, readonly RegExp[]>> = {
  poor: [],
  usual: [],
  rich: [
    /limits\.CHEM-1: is not stated, and has no default.* water\.conductivity of m3 raises nothing; state low and limit/,
  ],
};

describe('site files that come with Ebbline', () => {
  it('the demo site is taken without a warning', () => {
    expect(saidOf(textOf('simulator/demo-site/site.yaml'))).toEqual([]);
  });

  it('the demo site says in its summary what a cut of a rack hose does', () => {
    const read = siteFromText(textOf('simulator/demo-site/site.yaml'));
    expect(read.ok && summarizeSite(read.value.site)).toMatch(
      /A cut of the rack's own hose lets water down at \d+ branches .* plan it as a spill/,
    );
  });

  it('are tried with every sensor set there is', () => {
    expect([...shippedTemplates.keys()].sort()).toEqual(Object.keys(warningsOfSets).sort());
  });

  it.each(Object.entries(warningsOfSets))(
    'the sensor set %s warns of what only the site can know',
    (name, expected) => {
      expect(saidOf(withSet(name))).toEqual(expected.map((text) => expect.stringMatching(text) as string));
    },
  );
});

describe('warnings', () => {
  it('that say the same of several places are told once, at the first, with the others counted', () => {
    const document = parse(textOf('tests/helpers/sites/small-site.yaml')) as { units: Record<string, object> };
    const several = (units: number): readonly string[] =>
      saidOf(
        stringify({
          ...document,
          units: Object.fromEntries(
            Array.from({ length: units }, (_, i) => [
              `n${i + 1}`,
              { name: `Unit ${i + 1}`, hall: 'north', template: 'typeM', topic: `small/n${i + 1}`, hoseBore: '12 mm' },
            ]),
          ),
        }),
      ).filter((line) => line.includes('12 mm'));
    const [one] = several(1);
    expect(one).toMatch(/units\.n1\.hoseBore: through an opening of 12 mm .*: plan a cut here as a spill$/);
    expect(several(3)).toEqual([
      expect.stringMatching(/units\.n1\.hoseBore: .*as a spill; the same at 2 more places \(line \d+, line \d+\)$/),
    ]);
    expect(several(20)).toEqual([
      expect.stringMatching(/the same at 19 more places \((line \d+, ){5}line \d+ and 13 more\)$/),
    ]);
  });
});
