import { longestSeconds, shortestSeconds } from './trend-address';

export interface Span {
  readonly fromMs: number;
  readonly toMs: number;
}
export type Move = 'earlier' | 'later' | 'closer' | 'wider';

/** A quarter of what is shown to one side, or half or twice as long about its middle; never past what now is. */
export function movePeriod(span: Span, move: Move, nowMs: number): Span {
  const length = span.toMs - span.fromMs;
  switch (move) {
    case 'earlier':
      return { fromMs: span.fromMs - length / 4, toMs: span.toMs - length / 4 };
    case 'later': {
      const step = Math.min(length / 4, Math.max(0, nowMs - span.toMs));
      return { fromMs: span.fromMs + step, toMs: span.toMs + step };
    }
    case 'closer':
      return about((span.fromMs + span.toMs) / 2, length / 2, nowMs);
    case 'wider':
      return about((span.fromMs + span.toMs) / 2, length * 2, nowMs);
  }
}

/** A chosen stretch as a period, as short and as long as there is something to see. */
export const spanBetween = (oneMs: number, otherMs: number, nowMs: number): Span =>
  about((oneMs + otherMs) / 2, Math.abs(otherMs - oneMs), nowMs);

function about(middleMs: number, wantedMs: number, nowMs: number): Span {
  const length = Math.min(longestSeconds * 1000, Math.max(shortestSeconds * 1000, wantedMs));
  const toMs = Math.min(Math.max(nowMs, middleMs), middleMs + length / 2);
  return { fromMs: Math.round(toMs - length), toMs: Math.round(toMs) };
}
