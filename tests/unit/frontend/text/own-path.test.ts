import { expect, test } from 'vitest';
import { ownPath } from '../../../../frontend/src/text/own-path';

test.for(['/halls/north', '/units/N3?value=vacuumMargin#top', '/'])('%s is a path of this page', (path) => {
  expect(ownPath(path)).toBe(path);
});

test.for([
  ...['//evil.example', '/\\evil.example', 'https://evil.example', 'javascript:alert(1)', 'halls', ''],
  ...['/.//evil.example', '/a/..//evil.example', '/%2e//evil.example', '/\t/evil.example', undefined, ['/halls']],
])('%j leads to the first page', (given) => {
  expect(ownPath(given)).toBe('/');
});
