import { isDeeperThan } from '../decode/json-depth';
import { decodeUtf8 } from '../decode/utf8';
import { parseRfc3339 } from '../decode/rfc3339';
import { strictNumber } from '../decode/strict-number';
import type { HeardTime } from './heard-place';

/** One value at one place of a payload. */
export interface HeardValue {
  readonly path: readonly string[];
  readonly value: number | boolean | string;
  readonly unitBeside: string | null;
}

export interface HeardPayload {
  readonly values: readonly HeardValue[];
  readonly time: HeardTime | null;
}

/** What one message may cost: longer, deeper and wider ones are looked at no further. */
const longestBytes = 65_536;
const deepest = 6;
const mostValues = 200;
const longestWord = 40;
const longestKey = 80;

const unitKeys = new Set(['unit', 'units', 'uom', 'eu', 'engunit', 'engunits', 'unitofmeasure', 'engineeringunits']);
const timeKeys = /^(?:ts|t|time|timestamp|timestampms|datetime|date|at|when|epoch|utc)$/i;

/** The numbers and words of a payload with where they stand; none where it is none of what can be mapped. Never throws. */
export function hearPayload(bytes: Uint8Array, nowMs: number): HeardPayload {
  const none: HeardPayload = { values: [], time: null };
  if (bytes.length === 0 || bytes.length > longestBytes) return none;
  const text = decodeUtf8(bytes);
  if (text === null || isDeeperThan(bytes, text, deepest)) return none;
  let document: unknown;
  try {
    document = JSON.parse(text);
  } catch {
    return { values: bare(text.trim()), time: null };
  }
  if (typeof document !== 'object' || document === null)
    return { values: bare(text.trim().replace(/^"|"$/g, '')), time: null };
  if (Array.isArray(document)) return none;
  const values: HeardValue[] = [];
  let time: HeardTime | null = null;
  const walk = (node: object, path: readonly string[]): void => {
    const beside = unitIn(node);
    for (const [key, value] of Object.entries(node as Readonly<Record<string, unknown>>)) {
      if (values.length >= mostValues || key === '' || key.length > longestKey) return;
      const here = [...path, key];
      const form = timeKeys.test(key) ? timeForm(value, nowMs) : null;
      if (form !== null) time ??= { path: here, form };
      else if (typeof value === 'object' && value !== null) walk(value, here);
      else if (isHeard(value) && !unitKeys.has(plainKey(key))) values.push({ path: here, value, unitBeside: beside });
    }
  };
  walk(document, []);
  return { values, time };
}

const bare = (text: string): readonly HeardValue[] =>
  text === '' || text.length > longestWord ? [] : [{ path: [], value: plainValue(text), unitBeside: null }];

const plainValue = (text: string): number | boolean | string => {
  const number = strictNumber(text);
  if (!Number.isNaN(number)) return number;
  return text === 'true' ? true : text === 'false' ? false : text;
};

const isHeard = (value: unknown): value is number | boolean | string =>
  typeof value === 'boolean' ||
  (typeof value === 'number' && Number.isFinite(value)) ||
  (typeof value === 'string' && value !== '' && value.length <= longestWord);

const plainKey = (key: string): string => key.toLowerCase().replace(/[^a-z]/g, '');

function unitIn(node: object): string | null {
  const told = Object.entries(node).find(([key]) => unitKeys.has(plainKey(key)))?.[1] as unknown;
  return typeof told === 'string' && told.length <= longestWord ? told : null;
}

/** A year around now is believed to be a time; anything else under such a key is a value. */
const yearMs = 366 * 86_400_000;

function timeForm(value: unknown, nowMs: number): HeardTime['form'] | null {
  const isNear = (ms: number): boolean => Math.abs(ms - nowMs) < yearMs;
  if (typeof value === 'string' && isNear(parseRfc3339(value))) return 'iso';
  if (typeof value !== 'number') return null;
  if (isNear(value * 1000)) return 'epochSeconds';
  return isNear(value) ? 'epochMilliseconds' : null;
}
