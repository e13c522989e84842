import type { InjectionKey, Ref } from 'vue';
import { inject } from 'vue';
import type { RouteLocationRaw } from 'vue-router';
import { pastLink } from '../text/past-link';
import type { TrendName } from '../text/trend-link';
import { trendLink } from '../text/trend-link';
import { hallValueLink, valueLink } from '../text/value-link';

/** Whereto the parts of a picture lead. Null: from here there is no way. */
export interface Places {
  /** The second that is shown, ISO 8601; null: it is live. */
  readonly past: () => string | null;
  readonly loop: (unit: string) => RouteLocationRaw;
  readonly hall: (hall: string) => RouteLocationRaw;
  readonly value: (unit: string, point: string) => RouteLocationRaw | null;
  readonly hallValue: (hall: string, point: string) => RouteLocationRaw | null;
  readonly trend: (points: readonly TrendName[]) => RouteLocationRaw | null;
}

export const placesKey: InjectionKey<Places> = Symbol('places');

export const livePlaces: Places = {
  past: () => null,
  loop: (unit) => ({ name: 'loop', params: { unit } }),
  hall: (hall) => ({ name: 'hall', params: { hall } }),
  value: valueLink,
  hallValue: hallValueLink,
  trend: trendLink,
};

/** Of a past second: other loops and halls in the same second. What stands behind a value is known of now only. */
export const pastPlaces = (at: Readonly<Ref<string>>): Places => ({
  past: () => at.value,
  loop: (unit) => pastLink({ unit }, at.value) ?? '/',
  hall: (hall) => pastLink({ hall }, at.value) ?? '/',
  value: () => null,
  hallValue: () => null,
  trend: () => null,
});

/** Without any a picture is live. */
export const usePlaces = (): Places => inject(placesKey, livePlaces);
