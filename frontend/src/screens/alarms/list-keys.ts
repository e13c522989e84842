/** Keys of the standing list, while a row has the focus. */
export const listKeys: readonly (readonly [keys: string, does: string])[] = [
  ['↓ ↑', 'next and previous alarm'],
  ['Home, End', 'first and last alarm'],
  ['Enter', 'opens and closes why it stands and what follows'],
  ['→ ←', 'shows and hides what follows from it'],
  ['+', 'chooses the alarm, or no longer, to acknowledge several'],
  ['Esc', 'leaves a form; from a row, lets the order go on'],
];

const rowsOf = (list: HTMLElement): HTMLElement[] => [...list.querySelectorAll<HTMLElement>('.alarm-title')];

function goTo(list: HTMLElement, from: HTMLElement, key: string): boolean {
  const rows = rowsOf(list);
  const at = rows.indexOf(from);
  const next = { ArrowDown: at + 1, ArrowUp: at - 1, Home: 0, End: rows.length - 1 }[key];
  if (next === undefined) return false;
  rows[next]?.focus();
  return true;
}

function fold(title: HTMLElement, wanted: boolean): void {
  const button = title.closest('.alarm-group')?.querySelector<HTMLButtonElement>('.unfold');
  if (button?.getAttribute('aria-expanded') === String(!wanted)) button.click();
}

/** Does what a key asks for where a row's title has the focus. True where it was one of the list's keys. */
export function onListKey(list: HTMLElement, { key, target }: Pick<KeyboardEvent, 'key' | 'target'>): boolean {
  if (!(target instanceof HTMLElement) || !target.classList.contains('alarm-title')) return false;
  if (goTo(list, target, key)) return true;
  switch (key) {
    case 'ArrowRight':
    case 'ArrowLeft':
      fold(target, key === 'ArrowRight');
      return true;
    case '+':
      target.closest('.alarm-row')?.querySelector<HTMLInputElement>('.alarm-pick input')?.click();
      return true;
    default:
      return false;
  }
}
