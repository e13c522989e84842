import { describe, expect, it } from 'vitest';
import { loopbackIdentity } from '../../../../../backend/src/connections/http-api/loopback-identity';

const codeOf = (operator: string, remoteAddress: string): string => {
  const actor = loopbackIdentity.actorOf({ operator, remoteAddress });
  return actor.ok ? `${actor.value.name} at ${actor.value.station}` : actor.fault.code;
};

describe('who acts', () => {
  it('is the name given, at this machine', () => {
    expect(codeOf(' Ines ', '127.0.0.1')).toBe('Ines at 127.0.0.1');
    expect(codeOf('Ines', '::1')).toBe('Ines at ::1');
    // RFC 4291 section 2.5.5.2: an IPv4 address as an IPv6 socket tells it.
    expect(codeOf('Ines', '::ffff:127.0.0.1')).toBe('Ines at 127.0.0.1');
  });

  it('is nobody without a name, and nobody from elsewhere', () => {
    expect(codeOf('  ', '127.0.0.1')).toBe('ACTOR_UNNAMED');
    for (const address of ['192.0.2.1', '::ffff:192.0.2.1', '', '2001:db8::1', '127.0.0.1.example']) {
      expect(codeOf('Ines', address)).toBe('ACTOR_NOT_LOCAL');
    }
  });
});
