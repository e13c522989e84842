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
  ] as const)('%s', ([url, address, shown]) => {
    expect(brokerAddress(url)).toEqual({ ...address, embedded: false });
    expect(addressText(brokerAddress(url))).toBe(shown);
  });
});
