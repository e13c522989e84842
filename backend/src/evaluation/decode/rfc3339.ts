import { daysFromCivil, daysInMonth } from '@ebbline/shared/clock/days-from-civil';

const zero = 0x30;
const nine = 0x39;

/** The number that `length` digits from `start` spell, or −1 where one of them is no digit. */
function digits(text: string, start: number, length: number): number {
  let value = 0;
  for (let i = start; i < start + length; i += 1) {
    const code = text.charCodeAt(i);
    if (!(code >= zero && code <= nine)) return -1;
    value = value * 10 + (code - zero);
  }
  return value;
}

/** Offset from UTC in minutes at `at`: `Z`, `±hh:mm`, `±hhmm` or `±hh` to the end of the text; NaN where malformed. */
function offsetMinutes(text: string, at: number): number {
  const sign = text.charAt(at);
  if (sign === 'Z' || sign === 'z') return text.length === at + 1 ? 0 : Number.NaN;
  if (sign !== '+' && sign !== '-') return Number.NaN;
  const hours = digits(text, at + 1, 2);
  const rest = text.slice(at + 3);
  const minutes = rest === '' ? 0 : digits(rest, rest.startsWith(':') ? 1 : 0, 2);
  const length = rest === '' ? 0 : rest.startsWith(':') ? 3 : 2;
  if (hours < 0 || hours > 23 || minutes < 0 || minutes > 59 || rest.length !== length) return Number.NaN;
  return (sign === '-' ? -1 : 1) * (hours * 60 + minutes);
}

/**
 * RFC 3339 date and time → ms since 1970 UTC; NaN where malformed. Also takes a blank for the `T` (section
 * 5.6, note) and, of ISO 8601, a decimal comma and offsets without colon. Without an offset it is malformed:
 * local time has no instant. A leap second (`:60`, section 5.7) is counted as the second after it, as POSIX does.
 */
export function parseRfc3339(text: string): number {
  if (text.length < 20 || text.length > 40) return Number.NaN;
  const year = digits(text, 0, 4);
  const month = digits(text, 5, 2);
  const day = digits(text, 8, 2);
  const hour = digits(text, 11, 2);
  const minute = digits(text, 14, 2);
  const second = digits(text, 17, 2);
  if (text.charAt(4) !== '-' || text.charAt(7) !== '-' || text.charAt(13) !== ':' || text.charAt(16) !== ':')
    return Number.NaN;
  const separator = text.charAt(10);
  if (separator !== 'T' && separator !== 't' && separator !== ' ') return Number.NaN;
  if (year < 0 || month < 1 || month > 12 || day < 1 || day > daysInMonth(year, month)) return Number.NaN;
  if (hour < 0 || hour > 23 || minute < 0 || minute > 59 || second < 0 || second > 60) return Number.NaN;

  let at = 19;
  let fractionMs = 0;
  const point = text.charAt(at);
  if (point === '.' || point === ',') {
    let scale = 100;
    at += 1;
    const firstDigit = at;
    for (let digit = digits(text, at, 1); digit >= 0; digit = digits(text, at, 1)) {
      fractionMs += digit * scale;
      scale /= 10;
      at += 1;
    }
    if (at === firstDigit) return Number.NaN;
  }
  const offset = offsetMinutes(text, at);
  const utcMinutes = (daysFromCivil(year, month, day) * 24 + hour) * 60 + minute - offset;
  if (second === 60 && ((utcMinutes % 1440) + 1440) % 1440 !== 1439) return Number.NaN;
  return utcMinutes * 60_000 + second * 1000 + Math.floor(fractionMs + 1e-6);
}
