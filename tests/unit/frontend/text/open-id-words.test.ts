import { expect, it } from 'vitest';
import { openIdFaults } from '../../../../backend/src/ports/open-id';
import { refusedElsewhere } from '../../../../frontend/src/text/open-id-words';

it('has words of its own for each way in which the identity provider may not lead in', () => {
  const said = openIdFaults.map(refusedElsewhere);
  expect(new Set(said).size).toBe(openIdFaults.length);
  for (const text of said) expect(text).toMatch(/(Sign in|Ask)/);
});

it('repeats nothing that stands in the address', () => {
  expect(refusedElsewhere(undefined)).toBeNull();
  expect(refusedElsewhere('')).toBeNull();
  expect(refusedElsewhere(['OPEN_ID_ABSENT'])).toBeNull();
  for (const code of ['<b>call 555</b>', 'constructor']) expect(refusedElsewhere(code)).toMatch(/^The sign-in was/);
});
