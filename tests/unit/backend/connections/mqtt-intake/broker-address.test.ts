import { describe, expect, it } from 'vitest';
import { addressText, brokerAddress } from '../../../../../backend/src/connections/mqtt-intake/broker-address';

describe('the address of a broker', () => {
  it.for([
    [
      'mqtt://broker.example',
      { host: 'broker.example', port: 1883, username: null, password: null },
      'broker.example:1883',
    ],
    ['tcp://[::1]:1884', { host: '::1', port: 1884, username: null, password: null }, '[::1]:1884'],
    ['mqtt://us%40r:p%2Fw@h:1', { host: 'h', port: 1, username: 'us@r', password: 'p/w' }, 'h:1'],
    // IANA service name secure-mqtt: 8883.
    ['mqtts://h', { transport: 'tls', host: 'h', port: 8883, username: null, password: null }, 'h:8883'],
    ['ws://h', { transport: 'ws', host: 'h', port: 80, path: '/', username: null, password: null }, 'h:80'],
    [
      'wss://u:s@[fe80::1]:444/mqtt?token=secret',
      { transport: 'wss', host: 'fe80::1', port: 444, path: '/mqtt?token=secret', username: 'u', password: 's' },
      '[fe80::1]:444/mqtt',
    ],
  ] as const)('%s', ([url, address, shown]) => {
    expect(brokerAddress(url)).toEqual({ transport: 'tcp', path: '', ...address, embedded: false });
    expect(addressText(brokerAddress(url))).toBe(shown);
  });
});
