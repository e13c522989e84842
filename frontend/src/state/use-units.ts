import type { Ref } from 'vue';
import { readonly, ref } from 'vue';
import type { UnitSystem } from '../text/unit-system';
import { readUnitSystemBy, unitSystems } from '../text/unit-system';

const key = 'ebbline.units';
const system = ref<UnitSystem>('metric');

/** The units in which this browser reads; whatever writes a number follows. Called once at start. */
export function startUnits(): void {
  const kept = localStorage.getItem(key);
  system.value = unitSystems.find((one) => one === kept) ?? 'metric';
  readUnitSystemBy(() => system.value);
  addEventListener('storage', (change) => {
    if (change.key === key) system.value = unitSystems.find((one) => one === change.newValue) ?? 'metric';
  });
}

export function useUnits(): {
  readonly system: Readonly<Ref<UnitSystem>>;
  readonly choose: (next: UnitSystem) => void;
} {
  return {
    system: readonly(system),
    choose(next) {
      system.value = next;
      localStorage.setItem(key, next);
    },
  };
}
