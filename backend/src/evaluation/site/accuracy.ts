import { meterClasses, type MeterClass } from '@ebbline/shared/uncertainty/heat-meter';
import { platinumClasses, type PlatinumClass } from '@ebbline/shared/uncertainty/platinum';
import { fail, ok, type Result } from '@ebbline/shared/errors/result';

/**
 * What a sensor may be off, absolute in SI and as a share of the reading in SI (°C for temperatures): half-widths of bands
 * with nothing more known about them, and standard uncertainties of what a certificate states (normal).
 */
export interface Accuracy {
  readonly absolute: number;
  readonly relative: number;
  readonly normalAbsolute: number;
  readonly normalRelative: number;
}

export const accuracyNotStated: Accuracy = {
  absolute: Number.NaN,
  relative: Number.NaN,
  normalAbsolute: Number.NaN,
  normalRelative: Number.NaN,
};

/** Shares of a reading as shares of the largest one: for readings that are not what the slot holds. */
export const ofLargest = (accuracy: Accuracy, largest: number): Accuracy => ({
  absolute: accuracy.absolute + accuracy.relative * largest,
  relative: 0,
  normalAbsolute: Math.hypot(accuracy.normalAbsolute, accuracy.normalRelative * largest),
  normalRelative: 0,
});

export interface AccuracyContext {
  /** A difference in the point's units of measure → SI, or what was expected. */
  readonly difference: (text: string) => Result<number, string>;
  /** Width of `range` in SI; null where it has none. */
  readonly spanSi: number | null;
  readonly temperature: boolean;
  readonly flow: boolean;
}

type Band = Pick<Accuracy, 'absolute' | 'relative'>;

function band(text: string, context: AccuracyContext): Result<Band, string> {
  const platinum = /^Pt100 (AA|A|B|C)$/.exec(text);
  if (platinum !== null) {
    if (!context.temperature) return fail('a platinum class fits temperatures only');
    return ok(platinumClasses[platinum[1] as PlatinumClass]);
  }
  const meter = /^EN 1434 class ([123]) of (.+)$/.exec(text);
  if (meter !== null) return heatMeter(Number(meter[1]) as MeterClass, meter[2] ?? '', context);
  const share = /^±?\s*(\d+(?:\.\d+)?)\s*% of (reading|span)$/.exec(text);
  if (share !== null) {
    const part = Number(share[1]) / 100;
    if (share[2] === 'reading') return ok({ absolute: 0, relative: part });
    if (context.spanSi === null) return fail('"% of span" needs `range`; give the range or an absolute accuracy');
    return ok({ absolute: part * context.spanSi, relative: 0 });
  }
  const width = context.difference(text.replace(/^(±|\+-|\+\/-)\s*/, ''));
  if (!width.ok) return fail(`${width.fault}; or "1 % of reading", "0.5 % of span", "Pt100 A", "U = 0.1 K (k = 2)"`);
  if (!(width.value >= 0)) return fail('expected a half-width, not a negative number');
  return ok({ absolute: width.value, relative: 0 });
}

/** EN 1434 writes the flow sensor's class as half-width ±(a + b q_p/q) % of the reading: a part of the reading, and one of q_p. */
function heatMeter(grade: MeterClass, text: string, context: AccuracyContext): Result<Band, string> {
  const permanent = context.difference(text);
  if (!context.flow) return fail('a heat meter class fits flows only');
  if (!permanent.ok || !(permanent.value > 0))
    return fail('expected the permanent flow, such as EN 1434 class 2 of 20 m3/h');
  const { ofReading, ofPermanent } = meterClasses[grade];
  return ok({ absolute: (ofPermanent / 100) * permanent.value, relative: ofReading / 100 });
}

/** An expanded uncertainty with its coverage factor, as certificates state it (GUM 7.2.3): u = U/k, normal. */
function certificate(text: string, context: AccuracyContext): Result<Band, string> | null {
  const stated = /^U\s*=\s*(.+?)\s*\(\s*k\s*=\s*(\d+(?:\.\d+)?)\s*\)$/.exec(text);
  if (stated === null) return null;
  const k = Number(stated[2]);
  if (!(k >= 1)) return fail('expected a coverage factor of 1 or more, such as U = 0.1 K (k = 2)');
  const half = band(stated[1] ?? '', context);
  return half.ok ? ok({ absolute: half.value.absolute / k, relative: half.value.relative / k }) : half;
}

/** Bands add up: the sensor's own, its cable, its card. Certificates add as squares. */
export function parseAccuracy(stated: string | readonly string[], context: AccuracyContext): Result<Accuracy, string> {
  let absolute = 0;
  let relative = 0;
  let normalAbsolute = 0;
  let normalRelative = 0;
  for (const text of typeof stated === 'string' ? [stated] : stated) {
    const normal = certificate(text.trim(), context);
    const parsed = normal ?? band(text.trim(), context);
    if (!parsed.ok) return parsed;
    if (normal === null) {
      absolute += parsed.value.absolute;
      relative += parsed.value.relative;
    } else {
      normalAbsolute = Math.hypot(normalAbsolute, parsed.value.absolute);
      normalRelative = Math.hypot(normalRelative, parsed.value.relative);
    }
  }
  return ok({ absolute, relative, normalAbsolute, normalRelative });
}
