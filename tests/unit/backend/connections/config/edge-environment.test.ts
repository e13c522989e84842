import { describe, expect, it } from 'vitest';
import { readEnvironment } from '../../../../../backend/src/connections/config/environment';

const places = { workingFolder: '/srv/hall', demoSiteFile: '/srv/demo/site.yaml' };
const read = (variables: Record<string, string>) => readEnvironment(variables, places);
const faulty = (variables: Record<string, string>): string[] => {
  const environment = read(variables);
  return environment.ok ? [] : environment.fault.map(({ variable }) => variable);
};
const tls = { EBBLINE_TLS_CERTIFICATE_FILE: 'hall.pem', EBBLINE_TLS_KEY_FILE: '/etc/hall.key' };
const publicUrl = { EBBLINE_PUBLIC_URL: 'https://hall.example' };

describe('other machines', () => {
  it.for(['0.0.0.0', '::', '192.0.2.7', 'hall.example'])(
    'are let in on %s neither without TLS or a named proxy, nor without the public name',
    (host) => {
      const open = { EBBLINE_HTTP_HOST: host };
      expect(faulty(open)).toEqual(['EBBLINE_HTTP_HOST', 'EBBLINE_PUBLIC_URL']);
      expect(faulty({ ...open, ...publicUrl })).toEqual(['EBBLINE_HTTP_HOST']);
      expect(faulty({ ...open, ...tls })).toEqual(['EBBLINE_PUBLIC_URL']);
      expect(faulty({ ...open, ...tls, ...publicUrl })).toEqual([]);
      expect(faulty({ ...open, EBBLINE_PROXY: '10.0.0.5', ...publicUrl })).toEqual([]);
    },
  );

  it('reach this machine through a proxy on it only by a public name, and over TLS', () => {
    const proxy = { EBBLINE_PROXY: '127.0.0.1' };
    expect(faulty(proxy)).toEqual(['EBBLINE_PUBLIC_URL']);
    expect(faulty({ ...proxy, EBBLINE_PUBLIC_URL: 'http://hall.example' })).toEqual(['EBBLINE_PUBLIC_URL']);
    expect(faulty({ ...proxy, ...publicUrl })).toEqual([]);
  });

  it('send values to the embedded broker only by its access file and over TLS', () => {
    const open = { EBBLINE_MQTT_HOST: '0.0.0.0' };
    const access = { EBBLINE_BROKER_ACCESS_FILE: 'access.yaml' };
    const secured = { EBBLINE_BROKER_CERTIFICATE_FILE: 'broker.pem', EBBLINE_BROKER_KEY_FILE: 'broker.key' };
    expect(faulty(open)).toEqual(['EBBLINE_MQTT_HOST']);
    expect(faulty({ ...open, ...access })).toEqual(['EBBLINE_MQTT_HOST']);
    expect(faulty({ ...open, ...secured })).toEqual(['EBBLINE_MQTT_HOST']);
    expect(faulty({ ...open, ...access, ...secured })).toEqual([]);
    expect(faulty({ ...access, EBBLINE_MQTT_URL: 'mqtt://broker.example' })).toEqual(['EBBLINE_BROKER_ACCESS_FILE']);
  });
});

describe('the edge', () => {
  it('takes files from the folder where the command was given, and the public address without its slash', () => {
    const environment = read({
      ...tls,
      EBBLINE_PUBLIC_URL: 'https://Hall.example:443/',
      EBBLINE_PROXY: '10.0.0.5, fd00::/64',
    });
    expect(environment.ok && environment.value.edge).toMatchObject({
      tls: { certificate: '/srv/hall/hall.pem', key: '/etc/hall.key' },
      publicUrl: 'https://hall.example',
      proxies: ['10.0.0.5', 'fd00::/64'],
    });
  });

  it('takes no half of a pair of files', () => {
    expect(faulty({ EBBLINE_TLS_CERTIFICATE_FILE: 'hall.pem' })).toEqual(['EBBLINE_TLS_KEY_FILE']);
    expect(faulty({ EBBLINE_BROKER_KEY_FILE: 'broker.key' })).toEqual(['EBBLINE_BROKER_CERTIFICATE_FILE']);
  });

  it.for(['proxy.example', '10.0.0.5/33', '0.0.0.0/0', '::/0', '10.0.0.5,', '10.0.0.5/8/8', 'fd00::/129'])(
    'believes no proxy that is given as %s',
    (proxy) => expect(faulty({ EBBLINE_PROXY: proxy, ...publicUrl })).toContain('EBBLINE_PROXY'),
  );

  it.for(['hall.example', 'https://hall.example/app', 'https://u:p@hall.example', 'ftp://hall.example'])(
    'takes %s for no public address',
    (url) => expect(faulty({ EBBLINE_PUBLIC_URL: url })).toEqual(['EBBLINE_PUBLIC_URL']),
  );
});
