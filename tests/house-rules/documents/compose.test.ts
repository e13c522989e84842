import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { projectFiles, projectFolder } from '../files/project-files';

/** Keys of a service that this project may use, from the Compose specification (compose-spec, 05-services.md). */
const serviceKeys = [
  ...['image', 'build', 'command', 'network_mode', 'depends_on', 'environment', 'volumes', 'read_only', 'tmpfs'],
  ...['restart', 'user', 'healthcheck', 'stop_grace_period', 'init'],
];

interface Service {
  readonly image?: string;
  readonly network_mode?: string;
  readonly command?: readonly string[];
  readonly build?: { readonly dockerfile: string };
  readonly environment?: Readonly<Record<string, string>>;
  readonly depends_on?: readonly string[];
  readonly volumes?: readonly string[];
}

const textOf = (path: string): string => projectFiles().find((file) => file.path === path)?.text ?? '';
const compose = parse(textOf('docker-compose.yml')) as {
  services: Record<string, Service>;
  volumes: Record<string, unknown>;
};
const services = Object.values(compose.services);

/** No container engine runs here: what can be held without one is that it names only what exists. */
describe('docker-compose.yml', () => {
  test('sets only variables that the program reads', () => {
    const set = services
      .flatMap(({ environment }) => Object.keys(environment ?? {}))
      .filter((name) => name.startsWith('EBBLINE_'));
    expect(set.length).toBeGreaterThan(0);
    const readme = textOf('README.md');
    expect(set.filter((name) => !readme.includes(`\`${name}\``))).toEqual([]);
  });

  test('has only keys that the Compose specification knows', () => {
    expect(Object.keys(compose).sort()).toEqual(['services', 'volumes']);
    expect(services.flatMap((service) => Object.keys(service)).filter((key) => !serviceKeys.includes(key))).toEqual([]);
    for (const { image, build } of services) expect(image ?? build).toBeDefined();
  });

  test('has broker, store, backend and simulator apart, all where loopback is one and the same', () => {
    expect(Object.keys(compose.services)).toEqual(['broker', 'influxdb', 'backend', 'simulator']);
    for (const { network_mode: network } of services) expect(network).toBe('host');
    const { backend, simulator } = compose.services;
    expect(backend?.environment?.['EBBLINE_SIMULATOR']).toBe('off');
    expect(simulator?.environment?.['EBBLINE_MQTT_URL']).toBe(backend?.environment?.['EBBLINE_MQTT_URL']);
    const program = simulator?.command?.[1] ?? '';
    expect(existsSync(join(projectFolder, program))).toBe(true);
  });

  test('builds from Dockerfiles that exist, and names only services and volumes that it has', () => {
    for (const { build } of services)
      if (build !== undefined) expect(existsSync(join(projectFolder, build.dockerfile))).toBe(true);
    const named = services.flatMap(({ depends_on: needs }) => needs ?? []);
    expect(named.filter((name) => !(name in compose.services))).toEqual([]);
    const volumes = services.flatMap(({ volumes: mounted }) => mounted ?? []).map((mount) => mount.split(':')[0] ?? '');
    expect(volumes.filter((name) => !(name in compose.volumes))).toEqual([]);
  });
});
