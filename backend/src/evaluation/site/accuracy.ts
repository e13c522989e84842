import { fail, ok, type Result } from '@ebbline/shared/errors/result';

/** Half-widths: absolute in SI, and as a share of the reading in SI (°C for temperatures). */
export interface Accuracy {
  readonly absolute: number;
  readonly relative: number;
}

export interface AccuracyContext {
  /** A difference in the point's units of measure → SI, or what was expected. */
  readonly difference: (text: string) => Result<number, string>;
  /** Width of `range` in SI; null where it has none. */
  readonly spanSi: number | null;
  readonly temperature: boolean;
}

/** IEC 60751, tolerance classes of platinum resistance thermometers: ±(a + b·|t|), t in °C. */
const platinumClasses: Readonly<Record<string, Accuracy>> = {
  AA: { absolute: 0.1, relative: 0.0017 },
  A: { absolute: 0.15, relative: 0.002 },
  B: { absolute: 0.3, relative: 0.005 },
  C: { absolute: 0.6, relative: 0.01 },
};

function one(text: string, context: AccuracyContext): Result<Accuracy, string> {
  const platinum = /^Pt100 (AA|A|B|C)$/.exec(text);
  if (platinum !== null) {
    const stated = platinumClasses[platinum[1] ?? ''];
    if (!context.temperature || stated === undefined) return fail('a platinum class fits temperatures only');
    return ok(stated);
  }
  const share = /^±?\s*(\d+(?:\.\d+)?)\s*% of (reading|span)$/.exec(text);
  if (share !== null) {
    const part = Number(share[1]) / 100;
    if (share[2] === 'reading') return ok({ absolute: 0, relative: part });
    if (context.spanSi === null) return fail('"% of span" needs `range`; give the range or an absolute accuracy');
    return ok({ absolute: part * context.spanSi, relative: 0 });
  }
  const width = context.difference(text.replace(/^(±|\+-|\+\/-)\s*/, ''));
  if (!width.ok) return fail(`${width.fault}; or "1 % of reading", "0.5 % of span", "Pt100 A"`);
  if (!(width.value >= 0)) return fail('expected a half-width, not a negative number');
  return ok({ absolute: width.value, relative: 0 });
}

/** Several statements add up: the sensor's own, its cable, its card. */
export function parseAccuracy(stated: string | readonly string[], context: AccuracyContext): Result<Accuracy, string> {
  let absolute = 0;
  let relative = 0;
  for (const text of typeof stated === 'string' ? [stated] : stated) {
    const parsed = one(text.trim(), context);
    if (!parsed.ok) return parsed;
    absolute += parsed.value.absolute;
    relative += parsed.value.relative;
  }
  return ok({ absolute, relative });
}
