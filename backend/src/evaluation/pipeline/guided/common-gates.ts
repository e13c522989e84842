import type { Mode } from '@ebbline/shared/contract/http-api';
import { flows } from '../tightness/plant-at-rest';
import type { Gate } from './guided-test';
import { sayPoint } from './say-point';
import { has, uOf, valueOf, type GuidedView } from './guided-view';

/** The unit measures, or has worked out, all of these. */
export const needsPoints = (points: readonly string[]): Gate => ({
  code: 'GUIDED_NO_POINT',
  shut(view) {
    const lacking = points.filter((point) => !has(view, point));
    return lacking.length === 0 ? null : `the unit has no ${lacking.map(sayPoint).join(', no ')}`;
  },
});

/** The site file states the accuracy of each of these that the unit has. */
export const needsAccuracy = (points: (view: GuidedView) => readonly string[]): Gate => ({
  code: 'GUIDED_NO_ACCURACY',
  shut(view) {
    const lacking = points(view).filter(
      (point) => has(view, point) && !Number.isNaN(valueOf(view, point)) && Number.isNaN(uOf(view, point)),
    );
    if (lacking.length === 0) return null;
    return `the site file states no accuracy of ${lacking.map(sayPoint).join(', ')}: a result without uncertainty decides nothing`;
  },
});

/** Values that may be used now. */
export const needsValues = (points: (view: GuidedView) => readonly string[]): Gate => ({
  code: 'GUIDED_INPUT_BAD',
  shut(view) {
    const bad = points(view).filter((point) => has(view, point) && Number.isNaN(valueOf(view, point)));
    return bad.length === 0 ? null : `${bad.map(sayPoint).join(', ')}: bad or stale; see the points of the unit`;
  },
});

/** The unit is in one of these modes; one that is not known counts as running. */
export const needsMode = (modes: readonly Mode[], said: string): Gate => ({
  code: 'GUIDED_MODE',
  shut: ({ mode }) => (modes.includes(mode.mode) ? null : `the unit’s mode is “${mode.mode}”; ${said}`),
});

export const needsFlow: Gate = {
  code: 'GUIDED_FLOW',
  shut: (view) =>
    flows(view.pipeline, view.plan) === true
      ? null
      : 'no water flows, or nothing says so; the test needs the loop in flow',
};

/** The margin holds with its uncertainty: nothing is tried on a loop that could let water out. */
export const needsMargin = (leastPa: number): Gate => ({
  code: 'GUIDED_MARGIN',
  shut(view) {
    const margin = valueOf(view, 'vacuumMarginWorst');
    if (Number.isNaN(margin)) return 'the vacuum margin is not known';
    const u = uOf(view, 'vacuumMarginWorst');
    if (Number.isNaN(u)) return 'the uncertainty of the vacuum margin is not known';
    if (margin - 2 * u >= leastPa) return null;
    const kPa = (pascal: number): string => (pascal / 1000).toFixed(1);
    return `vacuum margin ${kPa(margin)} ± ${kPa(2 * u)} kPa, worst of running and stopped; at least ${kPa(leastPa)} kPa with its uncertainty is needed`;
  },
});
