import type { Figure } from '@ebbline/shared/contract/live-feed';
import type { InjectionKey, Ref } from 'vue';
import { inject, ref } from 'vue';
import { freshSeconds } from '../text/format-age';

/** How fresh everything on the page is; handed down once, as every value on it needs it. */
export interface Freshness {
  /** Seconds by which ages have grown since the frame they came in. */
  readonly secondsSinceFrame: Readonly<Ref<number>>;
  /** True where no frame comes any more: everything shown is old. */
  readonly old: Readonly<Ref<boolean>>;
}

export const freshnessKey: InjectionKey<Freshness> = Symbol('freshness');

/** Without one (a picture drawn on its own) values are as fresh as they say. */
export function useFreshness(): Freshness {
  return inject(freshnessKey, () => ({ secondsSinceFrame: ref(0), old: ref(false) }), true);
}

/** True where a figure is not of now: nothing new came in time, or it can't be told at all. */
export function isOld(figure: Pick<Figure, 'value' | 'quality' | 'reasons'>): boolean {
  return figure.value === null || figure.reasons.includes('stale') || figure.reasons.includes('ageUnknown');
}

/** True where the age beside a figure is not one of now. A bad value that came just now is missing, and not old. */
export function isStale(figure: Pick<Figure, 'value' | 'age' | 'reasons'>): boolean {
  if (figure.reasons.includes('stale') || figure.reasons.includes('ageUnknown')) return true;
  return figure.value === null && (figure.age === null || figure.age >= freshSeconds);
}
