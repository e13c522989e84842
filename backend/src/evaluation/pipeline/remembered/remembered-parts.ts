import { deriveMemoryOf } from '../../derive/memory/memory-of-state';
import type { PipelineState } from '../pipeline-state';

/** What happened in an outage longer than this is not known: who stopped a machine then, and with what in the water, is forgotten, ms. Own rule. */
export const shortOutageMs = 600_000;

/** Columns that hold a branch by its place, and what goes with it: of use only to a unit that has the same branches. */
const partColumns: readonly string[] = ['lasting.air.namedBranch', 'lasting.air.namedScore'];
export const namesParts = (path: string): boolean => partColumns.includes(path);

/** Rules that keep the place of a plate or node. */
const partEntries: readonly string[] = ['BOIL-1', 'BOIL-2'];
export const ruleNamesParts = (entry: string): boolean => partEntries.includes(entry);

/**
 * What outlives a restart, columns by unit: what took minutes to weeks to learn. `lasting` says itself what is too old (means by
 * their hours, trends by their steps, the last hour by its minutes); `short` is of use after a short outage only. Seconds' windows are not kept: they fill again.
 */
export function rememberedParts({
  air,
  hour,
  plant,
  site,
  state,
}: PipelineState): Readonly<Record<'lasting' | 'short', object>> {
  const { pumpStandbyProvedMs, vacuumStandbyProvedMs, ...runs } = plant.runs;
  const { gasBefore, waterBefore, stepMs, namedBranch, namedScore } = air;
  const { gas, offTests, topUps, watch, ...derived } = deriveMemoryOf(site, state);
  const { marginTrend, filterTrend, waterTrend, inLeakTrend, uaTrend, plateTrend } = derived;
  const { shifts, pattern, goodFromMs, waterLossM3, balanceTrend } = derived;
  return {
    lasting: {
      plant: { ...plant, runs: { pumpStandbyProvedMs, vacuumStandbyProvedMs } },
      air: { gasBefore, waterBefore, stepMs, namedBranch, namedScore },
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
    short: { runs },
  };
}
