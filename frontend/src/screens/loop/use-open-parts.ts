import { computed, provide } from 'vue';
import { useRoute, useRouter } from 'vue-router';
import { foldsKey } from '../../components/folds';
import { usePhone } from '../../components/use-phone';

/** On a phone the parts of a loop stand behind their headings; which of them are open stands in the address. */
export function useOpenParts(): void {
  const route = useRoute();
  const router = useRouter();
  const open = computed(() => {
    const { open: parts } = route.query;
    return new Set(typeof parts === 'string' && parts !== '' ? parts.split(',') : []);
  });
  provide(foldsKey, {
    folding: usePhone(),
    isOpen: (part) => open.value.has(part),
    toggle(part) {
      const next = new Set(open.value);
      if (!next.delete(part)) next.add(part);
      const rest = Object.entries(route.query).filter(([key]) => key !== 'open');
      const named: readonly (readonly [string, string])[] = next.size === 0 ? [] : [['open', [...next].join(',')]];
      void router.replace({ query: { ...Object.fromEntries(rest), ...Object.fromEntries(named) } });
    },
  });
}
