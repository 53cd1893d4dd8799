import { waitFor } from '@testing-library/react';
import { describe, expect, it } from 'vitest';
import { debriefOf, upTo } from './deskOfFlightA.tsx';

describe('the code of what was signed', () => {
  it('stands beside the signature, and a code heard from somebody else is judged by it', async () => {
    const desk = await debriefOf(upTo(138));
    for (const act of ['tab-sign', 'signer-scribe', 'sign']) {
      await desk.user.click(desk.act(act));
    }
    await waitFor(() => expect(desk.all('code-signed')).toHaveLength(1));
    const code = desk.act('code-signed').textContent;
    expect(code).toMatch(/^[0-9A-Z]{4}-[0-9A-Z]{4}$/);

    const verdictOf = async (typed: string): Promise<string> => {
      await desk.user.clear(desk.act('code-heard'));
      await desk.user.type(desk.act('code-heard'), typed);
      return desk.act('code-verdict').textContent;
    };
    expect(await verdictOf(code.toLowerCase().replace('-', ' '))).toMatch(/^The version signed/);
    expect(await verdictOf(desk.act('code-now').textContent)).toMatch(/^The same record/);
    expect(await verdictOf('ABCD')).toMatch(/^Not a whole code yet/);
    expect(await verdictOf('ABCD-EFGH')).toMatch(/^Not the same/);
  });
});
