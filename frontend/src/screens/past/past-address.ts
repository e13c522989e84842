import { toSecond } from '../../text/past-link';
import { fromZoneLocal, toZoneLocal } from '../../text/zone-time';

type Query = Readonly<Record<string, unknown>>;

/** How much of the time is on the scale, s. */
export const pastSpans = [3600, 21_600, 86_400] as const;
export type PastSpan = (typeof pastSpans)[number];
export const spanWords: { readonly [S in PastSpan]: string } = { 3600: '1 h', 21_600: '6 h', 86_400: 'a day' };

/** How far an arrow key goes, s. */
export const pastSteps = [1, 10, 60] as const;
export type PastStep = (typeof pastSteps)[number];
export const stepWords: { readonly [S in PastStep]: string } = { 1: '1 s', 10: '10 s', 60: '1 min' };

export interface PastView {
  /** The second that is asked for, ISO 8601 without fractions; null: the address names none. */
  readonly at: string | null;
  readonly span: PastSpan;
  readonly step: PastStep;
}

export function readPastAddress(query: Query): PastView {
  const at = typeof query['at'] === 'string' ? Date.parse(query['at']) : Number.NaN;
  const chosen = <Of extends number>(key: string, all: readonly Of[], usual: Of): Of =>
    all.find((one) => String(one) === query[key]) ?? usual;
  return {
    at: Number.isNaN(at) ? null : isoOf(at),
    span: chosen('span', pastSpans, 3600),
    step: chosen('step', pastSteps, 10),
  };
}

export const writePastAddress = ({ at, span, step }: PastView): Record<string, string> => ({
  ...(at === null ? {} : { at }),
  ...(span === 3600 ? {} : { span: String(span) }),
  ...(step === 10 ? {} : { step: String(step) }),
});

/** Begin of the second in which a time lies. */
export const isoOf = (ms: number): string => toSecond(new Date(Math.floor(ms / 1000) * 1000).toISOString());

export interface PastWindow {
  readonly fromMs: number;
  readonly toMs: number;
}

/** The hour, quarter of a day or day of the site's calendar in which a second lies: the scale stays while one moves over it. */
export function windowOf(at: string, span: PastSpan, zone: string): PastWindow {
  const atMs = Date.parse(at);
  const local = toZoneLocal(at, zone);
  const hours = Number(local.slice(11, 13));
  const begin = hours - (hours % (span / 3600));
  const from = fromZoneLocal(`${local.slice(0, 11)}${String(begin).padStart(2, '0')}:00:00`, zone);
  const fromMs = from === null ? Number.NaN : Date.parse(from);
  if (Number.isNaN(fromMs)) return { fromMs: atMs - span * 500, toMs: atMs + span * 500 };
  // The hour that a day has more, or the one that it has twice, when clocks are set back, stands on the scale before or behind.
  const scales = Math.floor((atMs - fromMs) / (span * 1000));
  const begins = fromMs + scales * span * 1000;
  return { fromMs: begins, toMs: begins + span * 1000 };
}
