import { hotellingLimit } from '@ebbline/shared/statistics/hotelling';
import { speLimit } from '@ebbline/shared/statistics/principal-components';
import { deriveHall } from '../../backend/src/evaluation/derive/derive-hall';
import { deriveUnit } from '../../backend/src/evaluation/derive/derive-unit';
import { patternAlpha } from '../../backend/src/evaluation/derive/memory/pattern';
import { patternSignals } from '../../backend/src/evaluation/derive/watched-signals';
import { buildRichUnitM, runRichUnitM } from '../helpers/rich-unit-m';
import { absolute, relative, type PublishedTable } from './published-table';

const scale = [1e-4, 500, 300, 0.5, 0.7, 1e-4];
/** So much of its own that each signal has beside what it shares with the two others of its group: ρ = 1/(1 + a²). */
const own = 0.25;
const rho = 1 / (1 + own * own);
const blocks = 32;

/** Columns of plus and minus one that know nothing of each other: parities of bits of the row's number. */
const column = (mask: number, row: number): number => {
  let bits = mask & row;
  let sign = 1;
  while (bits > 0) {
    if ((bits & 1) === 1) sign = -sign;
    bits >>= 1;
  }
  return sign;
};
const groups = [0, 0, 0, 1, 1, 1];
const learntAt = (row: number): readonly number[] =>
  groups.map((group, i) => column(group === 0 ? 1 : 2, row) + own * column(4 + i, row));

/** Deviation of each signal over the learnt rows. */
const deviation = Math.sqrt(((1 + own * own) * blocks) / (blocks - 1));
const values = [1 + 2 * rho, 1 + 2 * rho, 1 - rho, 1 - rho, 1 - rho, 1 - rho];

/** Pattern figures of unit M after 32 learnt means, for a mean that lies so many deviations away. */
function onSite(point: 'patternDistance' | 'patternResidual', away: readonly number[]): number {
  const built = buildRichUnitM({
    design: { ...buildRichUnitM().site.units[0]?.design, knownGood: { fromMs: 0, hours: blocks / 6 } },
  });
  runRichUnitM(built);
  const usual = patternSignals.map((signal) => built.value(signal));
  const block = (number: number, offsets: readonly number[]): void => {
    for (let s = number * 600; s < (number + 1) * 600; s += 10) {
      runRichUnitM(built, s * 1000);
      patternSignals.forEach((signal, i) => {
        built.set(signal, (usual[i] ?? 0) + (scale[i] ?? 0) * (offsets[i] ?? 0), s * 1000);
      });
      deriveHall(built.site, built.state, 0, s * 1000);
      deriveUnit(built.site, built.state, 0, s * 1000, false);
    }
  };
  for (let row = 0; row < blocks; row += 1) block(row, learntAt(row));
  block(
    blocks,
    away.map((share) => share * deviation),
  );
  block(blocks + 1, learntAt(0));
  return built.value(point);
}

const source =
  'eigenvalues 1 + 2ρ and 1 − ρ of three signals of equal correlation (Johnson & Wichern, section 8.2), worked out by hand';

/** All three signals of a group two deviations up: T² = 3 · 2² ÷ (1 + 2ρ), nothing off the pattern. */
export const patternDistanceTable: PublishedTable = {
  title: 'limit of T² of new points, two components of 32 means; T² on a site',
  subject: { point: 'patternDistance' },
  evaluate: (equation) => 12 / (1 + 2 * rho) / equation(2, blocks, patternAlpha),
  onSite: { point: 'patternDistance', evaluate: () => onSite('patternDistance', [2, 2, 2, 0, 0, 0]) },
  rows: [
    {
      id: 'three signals up by two deviations',
      status: 'computed',
      source,
      inputs: {},
      expected: 12 / (1 + 2 * rho) / hotellingLimit(2, blocks, patternAlpha),
      tolerance: relative(1e-6),
    },
  ],
};

/** One signal two up, its neighbour two down: nothing along the pattern, SPE = 2 · 2². */
export const patternResidualTable: PublishedTable = {
  title: 'limit of SPE with four components of 1 − ρ left over; SPE on a site',
  subject: { point: 'patternResidual' },
  evaluate: (equation) => 8 / (equation as unknown as typeof speLimit)(values, 2, patternAlpha),
  onSite: { point: 'patternResidual', evaluate: () => onSite('patternResidual', [2, -2, 0, 0, 0, 0]) },
  rows: [
    {
      id: 'two signals part by four deviations',
      status: 'computed',
      source,
      inputs: {},
      expected: 8 / speLimit(values, 2, patternAlpha),
      tolerance: relative(1e-6),
    },
  ],
};

/** Bounds between which those limits must lie by exact statistics: χ² of four components of equal width. */
export const residualBoundTable: PublishedTable = {
  title: 'limit of SPE of four components of equal width against the exact λ χ², 5 %',
  subject: { equation: speLimit as unknown as (...inputs: never[]) => number },
  evaluate: () => speLimit([1, 1, 1, 1], 0, 0.05),
  rows: [
    {
      id: 'χ² of 4 at 95 %',
      status: 'published',
      source:
        'NIST/SEMATECH e-Handbook 1.3.6.7.4: 9.488; the approximation of Jackson & Mudholkar is good to 1 % (1979)',
      inputs: {},
      expected: 9.488,
      tolerance: absolute(0.095),
    },
  ],
};
