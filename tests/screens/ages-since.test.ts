import { mount } from '@vue/test-utils';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { h, nextTick } from 'vue';
import AgesSince from '../../frontend/src/screens/loop/AgesSince.vue';
import AgeText from '../../frontend/src/components/AgeText.vue';

beforeEach(() => vi.useFakeTimers());
afterEach(() => vi.useRealTimers());

describe('what is asked for now and then', () => {
  it('has ages that grow since it came, and is old once it can’t be read anew', async () => {
    const page = mount(AgesSince, {
      props: { cameMs: performance.now(), failed: false },
      slots: { default: () => h(AgeText, { age: 10 }) },
    });
    expect(page.text()).toBe('10\u00a0s');
    await vi.advanceTimersByTimeAsync(9000);
    expect(page.text()).toBe('19\u00a0s');
    expect(page.find('.age-old').exists()).toBe(false);
    await page.setProps({ failed: true });
    await nextTick();
    expect(page.find('.age-old').exists()).toBe(true);
    page.unmount();
  });
});
