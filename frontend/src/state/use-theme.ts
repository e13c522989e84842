import type { Ref } from 'vue';
import { readonly, ref } from 'vue';

export type Theme = 'light' | 'dark';

const key = 'ebbline.theme';
const theme = ref<Theme>('light');
let chosen = false;
/** What a screen has for as long as it shows, whatever is chosen. */
let held: Theme | null = null;

function put(next: Theme): void {
  theme.value = next;
  document.documentElement.dataset['theme'] = held ?? next;
}

/** Keeps one theme whatever is chosen, until the function that it gives is called. */
export function holdTheme(wanted: Theme): () => void {
  held = wanted;
  put(theme.value);
  return () => {
    held = null;
    put(theme.value);
  };
}

/** Follows the system until a person chooses; the choice is kept in this browser. Called once at start. */
export function startTheme(): void {
  const system = matchMedia('(prefers-color-scheme: dark)');
  const kept = localStorage.getItem(key);
  chosen = kept === 'light' || kept === 'dark';
  put(chosen ? (kept as Theme) : system.matches ? 'dark' : 'light');
  system.addEventListener('change', (change) => {
    if (!chosen) put(change.matches ? 'dark' : 'light');
  });
}

export function useTheme(): { readonly theme: Readonly<Ref<Theme>>; readonly toggle: () => void } {
  return {
    theme: readonly(theme),
    toggle() {
      chosen = true;
      put(theme.value === 'dark' ? 'light' : 'dark');
      localStorage.setItem(key, theme.value);
    },
  };
}
