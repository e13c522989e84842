import type { Ref } from 'vue';
import { onMounted, ref } from 'vue';
import { useRoute, useRouter } from 'vue-router';
import { readFirstPoints } from '../../state/first-points';
import { readAddress, writeAddress } from './trend-address';

/**
 * Come to without a choice, the screen begins with what is looked at most, of the unit that the address names (the one
 * that the person came from) or of the one that needs a person most. The way back leads past it. True while it is asked for.
 */
export function useFirstView(read: typeof readFirstPoints = readFirstPoints): Readonly<Ref<boolean>> {
  const route = useRoute();
  const router = useRouter();
  const asking = ref(readAddress(route.query).points.length === 0);
  const { unit } = route.query;
  onMounted(async () => {
    if (!asking.value) return;
    const points = await read(typeof unit === 'string' && unit !== '' ? unit : null);
    asking.value = false;
    const now = readAddress(route.query);
    // Meanwhile the person may have chosen, or gone elsewhere.
    if (points.length === 0 || now.points.length > 0 || route.name !== 'trends') return;
    await router.replace({ name: 'trends', query: writeAddress({ ...now, points }) });
  });
  return asking;
}
