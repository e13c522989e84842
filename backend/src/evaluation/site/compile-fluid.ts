import type { FluidInFile } from '@ebbline/shared/contract/site-file-fluid';
import { glycolOfAshrae } from '@ebbline/shared/fluid-properties/glycol-ashrae';
import { glycolMassOfVolume, glycolVolumeOfMass } from '@ebbline/shared/fluid-properties/glycol-fraction';
import { glycolOfMelinder } from '@ebbline/shared/fluid-properties/glycol-melinder';
import { massFraction, volumeFraction } from '@ebbline/shared/units/quantity';
import { fluidOf, type CompiledFluid } from './compiled-fluid';
import type { MergedUnit } from './merge-templates';
import { siOrNull } from './read-quantities';
import type { FaultList } from './site-fault';

const water: CompiledFluid = { kind: 'water' };

/** The liquid of one side. A share that the chosen source counts the other way is turned by the published table. */
export function compileFluid(merged: MergedUnit, key: 'fluid' | 'facilityFluid', faults: FaultList): CompiledFluid {
  const file: FluidInFile | undefined = merged.unit[key];
  const fault = (part: keyof FluidInFile, message: string): void => faults.add(merged.at(key, part), message);
  if (file === undefined) return water;
  if (file.kind === 'water') {
    for (const part of ['source', 'massFraction', 'volumeFraction'] as const)
      if (file[part] !== undefined) fault(part, 'goes with kind: propyleneGlycol only; take it out');
    return water;
  }
  const mass = siOrNull(file.massFraction, 'ratio');
  const volume = siOrNull(file.volumeFraction, 'ratio');
  if (mass !== null && volume !== null) {
    fault(
      'volumeFraction',
      'stands beside massFraction, and 25 % by mass is 24.4 % by volume; keep the one that was measured',
    );
    return water;
  }
  if (mass === null && volume === null) {
    if (file.massFraction === undefined && file.volumeFraction === undefined)
      fault('volumeFraction', 'is missing; give volumeFraction or massFraction of the glycol, such as 25 %');
    return water;
  }
  if (file.source === undefined) {
    fault('source', 'is missing; expected ashrae or melinder2010: they differ by about 1 % in heat');
    return water;
  }
  const compiled: CompiledFluid =
    file.source === 'ashrae'
      ? {
          kind: 'propyleneGlycol',
          source: 'ashrae',
          fraction: mass === null ? volumeFraction(volume ?? Number.NaN) : glycolVolumeOfMass(massFraction(mass)),
        }
      : {
          kind: 'propyleneGlycol',
          source: 'melinder2010',
          fraction: mass === null ? glycolMassOfVolume(volumeFraction(volume ?? Number.NaN)) : massFraction(mass),
        };
  const range = (file.source === 'ashrae' ? glycolOfAshrae : glycolOfMelinder).fraction;
  if (compiled.fraction >= range.minimum && compiled.fraction <= range.maximum) return compiled;
  fault(
    mass === null ? 'volumeFraction' : 'massFraction',
    `${file.source} holds for ${range.quantity} ${percent(range.minimum)} … ${percent(range.maximum)} %; correct the share or choose the other source`,
  );
  return water;
}

const percent = (share: number): number => Math.round(share * 100);

/** Refuses a liquid whose source ends below the temperatures that the unit runs at: nothing of it could be worked out. */
export function checkFluidRange(
  merged: MergedUnit,
  key: 'fluid' | 'facilityFluid',
  fluid: CompiledFluid,
  usualC: readonly (number | null)[],
  faults: FaultList,
): void {
  const { name, source, minimumC, maximumC } = fluidOf(fluid);
  const outside = usualC.find((t) => t !== null && (t < minimumC || t > maximumC));
  if (outside === undefined || outside === null) return;
  faults.add(
    merged.at(key),
    `${name} is known from ${minimumC} to ${maximumC} °C (${source}), and this unit runs at ${Number(outside.toFixed(1))} °C; choose a source that reaches there`,
  );
}
