import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';

const BROWSER = join(import.meta.dirname, '../browser');

it('the tests of the built app measure every requirement of the cockpit, R1 to R42', () => {
  const files = readdirSync(BROWSER, { recursive: true, encoding: 'utf8' }).filter((file) =>
    file.endsWith('.ts'),
  );
  const rows = files.flatMap((file) =>
    [...readFileSync(join(BROWSER, file), 'utf8').matchAll(/'(R\d{1,2})'/g)].map(([, no]) => no),
  );
  const wanted = Array.from({ length: 42 }, (_, index) => `R${index + 1}`);
  expect(wanted.filter((no) => !rows.includes(no))).toEqual([]);
});
