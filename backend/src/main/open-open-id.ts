import type { ValueProvider } from '@nestjs/common';
import type { Environment } from '../connections/config/environment';
import { noOpenId } from '../connections/open-id/no-open-id';
import { OpenIdClient } from '../connections/open-id/open-id-client';
import type { Clock } from '../ports/clock';
import { OPEN_ID } from '../ports/open-id';

/** The identity provider of the settings; it is asked only when someone signs in there. */
export function openOpenId({ openId, edge }: Environment, clock: Pick<Clock, 'wallMs'>): ValueProvider {
  const { publicUrl } = edge;
  const useValue = openId === null ? noOpenId : new OpenIdClient({ ...openId, publicUrl }, () => clock.wallMs());
  return { provide: OPEN_ID, useValue };
}
