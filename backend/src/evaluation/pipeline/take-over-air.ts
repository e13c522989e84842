import { copyColumns } from './copy-columns';
import type { PipelineState } from './pipeline-state';
import type { SiteMaps } from './site-maps';

/** Rings and noise by signal, the rest by unit; a branch that was named is found again by its id. */
export function takeOverAir(before: PipelineState, now: PipelineState, { airSignals, units }: SiteMaps): void {
  const old = before.air;
  const fresh = now.air;
  copyColumns({ rings: old.rings, noise: old.noise }, { rings: fresh.rings, noise: fresh.noise }, airSignals);
  const byUnit = ({
    estimated,
    flowMovedMs,
    waterMovedMs,
    gasBefore,
    gasBeforeNewest,
    waterBefore,
    neighboursBefore,
    setPointOfSpan,
    setPointBefore,
    calledMs,
    roseFromPa,
    stillSinceMs,
    stepMs,
    namedScore,
  }: typeof old) => ({
    estimated,
    flowMovedMs,
    waterMovedMs,
    gasBefore,
    gasBeforeNewest,
    waterBefore,
    neighboursBefore,
    setPointOfSpan,
    setPointBefore,
    calledMs,
    roseFromPa,
    stillSinceMs,
    stepMs,
    namedScore,
  });
  copyColumns(byUnit(old), byUnit(fresh), units);
  now.site.units.forEach((unit, i) => {
    const was = units.before[i] ?? -1;
    const named = before.site.units[was]?.branches[old.namedBranch[was] ?? -1]?.id;
    fresh.namedBranch[i] = unit.branches.findIndex(({ id }) => id === named);
  });
}
