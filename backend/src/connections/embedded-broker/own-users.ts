import { randomBytes } from 'node:crypto';

/** Someone of this program. The password lives as long as the process. */
export interface OwnUser {
  readonly name: string;
  readonly password: string;
  readonly publish: readonly string[];
  readonly subscribe: readonly string[];
}

/** Names that an access file may not use. */
export const ownNames = { backend: 'ebbline', simulator: 'ebbline-simulator' } as const;

/** What the simulator hears; it sends to whatever topics the site file has. */
const simulatorHears = ['ebbline-simulator/command'];

/** Drawn anew at each start: 256 bits each. */
export function drawOwnUsers(): { readonly backend: OwnUser; readonly simulator: OwnUser } {
  const draw = (): string => randomBytes(32).toString('base64url');
  return {
    backend: { name: ownNames.backend, password: draw(), publish: ['#'], subscribe: ['#'] },
    simulator: { name: ownNames.simulator, password: draw(), publish: ['#'], subscribe: simulatorHears },
  };
}
