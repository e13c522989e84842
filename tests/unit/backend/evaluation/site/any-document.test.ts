import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { derivedPointIds } from '../../../../../backend/src/evaluation/derive/derived-point-ids';
import { compileSite } from '../../../../../backend/src/evaluation/site/compile-site';
import { fullSiteDocument } from './full-site';

type Place = { holder: Record<string | number, unknown>; key: string | number };

/** Every place of a document where a value stands. */
function placesIn(value: unknown, found: Place[] = []): Place[] {
  if (typeof value !== 'object' || value === null) return found;
  const holder = value as Record<string | number, unknown>;
  for (const key of Object.keys(holder)) {
    found.push({ holder, key });
    placesIn(holder[key], found);
  }
  return found;
}

const odd = fc.oneof(
  fc.constantFrom(
    '',
    '0 mm',
    '-1 L',
    '1e999 kPa',
    '8 mm',
    '35 °C',
    '{unit}',
    '*',
    'm1',
    'r1',
    '__proto__',
    'constructor',
  ),
  fc.string({ maxLength: 12 }),
  fc.double(),
  fc.integer(),
  fc.boolean(),
  fc.constant(null),
  fc.constant({}),
  fc.constant([]),
  fc.jsonValue({ maxDepth: 3 }),
);

describe('compileSite with any document', () => {
  it('accepts the full site that the others are changed from', () => {
    const compiled = compileSite(fullSiteDocument(), derivedPointIds);
    expect(compiled.ok ? [] : compiled.fault).toEqual([]);
  });

  it('returns a site or faults that say where and what, whatever stands anywhere', () => {
    const change = fc.record({
      place: fc.nat(),
      value: odd,
      takeOut: fc.boolean(),
      key: fc.option(fc.string({ maxLength: 8 })),
    });
    fc.assert(
      fc.property(fc.array(change, { minLength: 1, maxLength: 4 }), (changes) => {
        const document = fullSiteDocument();
        for (const { place, value, takeOut, key } of changes) {
          const places = placesIn(document);
          const one = places[place % Math.max(1, places.length)];
          if (one === undefined) continue;
          if (takeOut) Reflect.deleteProperty(one.holder, one.key);
          else one.holder[key ?? one.key] = value;
        }
        const compiled = compileSite(document, derivedPointIds);
        if (compiled.ok) return;
        expect(compiled.fault.length).toBeGreaterThan(0);
        for (const { path, message } of compiled.fault) {
          expect(Array.isArray(path)).toBe(true);
          expect(message.length).toBeGreaterThan(5);
        }
      }),
      { numRuns: 400 },
    );
  });

  it('refuses any plain data that is no site', () => {
    fc.assert(
      fc.property(fc.jsonValue(), (document) => {
        expect(compileSite(document, derivedPointIds).ok).toBe(false);
      }),
    );
  });
});
