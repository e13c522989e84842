import type { OutOfServiceWish } from '../../components/shelving';

/** How an alarm is to be set aside. */
export type SetAsideWish =
  | { readonly way: 'shelve'; readonly reason: string; readonly minutes: number }
  | ({ readonly way: 'outOfService' } & OutOfServiceWish);
