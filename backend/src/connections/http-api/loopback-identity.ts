import { fail, ok } from '@ebbline/shared/errors/result';
import type { Identity } from '../../ports/identity';

/** Until people sign in: whoever sits at this machine acts under the name that they give. */
export const loopbackIdentity: Identity = {
  actorOf({ operator, remoteAddress }) {
    if (!isLoopback(remoteAddress)) {
      return fail({
        code: 'ACTOR_NOT_LOCAL',
        message: 'There is no sign-in yet, so actions are taken only at the machine itself.',
      });
    }
    const name = operator.trim();
    return name === ''
      ? fail({ code: 'ACTOR_UNNAMED', message: 'Say who acts: give a name as operator.' })
      : ok({ name, station: remoteAddress.replace(/^::ffff:/, '') });
  },
};

/** 127.0.0.0/8 (RFC 1122 section 3.2.1.3) and ::1 (RFC 4291 section 2.5.3), also as IPv4-mapped. */
const isLoopback = (address: string): boolean => /^(::ffff:)?127\.\d+\.\d+\.\d+$|^::1$/.test(address);
