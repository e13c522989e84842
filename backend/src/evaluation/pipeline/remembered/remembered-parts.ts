import type { UnitEntryId } from '../../alarm-rules/entry-ids';
import { deriveMemoryOf } from '../../derive/memory/memory-of-state';
import type { PipelineState } from '../pipeline-state';

/** What happened in an outage longer than this is not known: who stopped a machine then, and with what in the water, is forgotten, ms. Own rule. */
const shortOutageMs = 600_000;

/** A mean of six hours is still one after an hour that nobody watched; after longer it may be of other weather, ms. Own rule. */
const hoursOutageMs = 3600_000;

/** Whether a column is of no more use after such an outage. */
export const isTooOld = (path: string, outageMs: number): boolean =>
  outageMs > (path.startsWith('short.') ? shortOutageMs : path.startsWith('hours.') ? hoursOutageMs : Infinity);

/** Columns that hold a branch by its place, and what goes with it: of use only to a unit that has the same branches. */
const partColumns: readonly string[] = ['lasting.air.namedBranch', 'lasting.air.namedScore'];
export const namesParts = (path: string): boolean => partColumns.includes(path);

/** Rules that keep places of branches, plates or nodes. */
export const placeRules: readonly UnitEntryId[] = ['AIR-1', 'BOIL-1', 'BOIL-2', 'WATER-1'];
export const ruleNamesParts = (entry: string): boolean => placeRules.some((rule) => rule === entry);

/**
 * What outlives a restart, columns by unit: what took minutes to weeks to learn. `lasting` says itself what is too old (means by
 * their hours, trends by their steps, the last hour by its minutes); `hours` are means that keep no time of their own; `short` is of use after a short outage only. Seconds' windows are not kept: they fill again.
 */
export function rememberedParts({
  air,
  hour,
  plant,
  site,
  state,
  unitMeans,
}: PipelineState): Readonly<Record<'lasting' | 'hours' | 'short', object>> {
  const { pumpStandbyProvedMs, vacuumStandbyProvedMs, ...runs } = plant.runs;
  const { gasBefore, gasBeforeNewest, waterBefore, neighboursBefore, stepMs, namedBranch, namedScore } = air;
  const { gas, offTests, topUps, watch, ...derived } = deriveMemoryOf(site, state);
  const { marginTrend, filterTrend, waterTrend, inLeakTrend, uaTrend, plateTrend } = derived;
  const { shifts, pattern, goodFromMs, waterLossM3, balanceTrend } = derived;
  return {
    lasting: {
      plant: { ...plant, runs: { pumpStandbyProvedMs, vacuumStandbyProvedMs } },
      air: { gasBefore, gasBeforeNewest, waterBefore, neighboursBefore, stepMs, namedBranch, namedScore },
      hour,
      derive: {
        gas: { budgetM3: gas.budgetM3 },
        offTests: { rate: offTests.rate, noise: offTests.noise, noiseDegrees: offTests.noiseDegrees },
        topUps,
        marginTrend,
        filterTrend,
        waterTrend,
        waterLossM3,
        balanceTrend,
        inLeakTrend,
        uaTrend,
        plateTrend,
        watch: { mean: watch.mean, closed: watch.closed },
        shifts,
        pattern,
        goodFromMs,
      },
    },
    hours: { unitMeans },
    short: { runs },
  };
}

/** The same by hall. */
export const rememberedOfHalls = ({ hallMeans }: PipelineState): Readonly<Record<'hours', object>> => ({
  hours: { hallMeans },
});
