import { describe, expect, it } from 'vitest';
import { headsOf } from '../../src/file/timelineFile.ts';
import { entryId } from '../../src/record/brand.ts';
import type { Entry } from '../../src/record/entry.ts';
import { viewOf } from '../../src/record/flight.ts';
import { headCode } from '../../src/record/headCode.ts';
import { codeHeard, signedVersions } from '../../src/record/signatures.ts';
import { chainOf, ENGINEER, mark, note, OPENED } from '../file/smallFlight.ts';

const written = chainOf([OPENED, note('covers on'), mark]);
const others = chainOf([note('warm')], { rec: ENGINEER });

function signed(before: readonly Entry[], after: readonly Entry[] = []): readonly Entry[] {
  const heads = headsOf(before).map((head) => ({ ...head, hash: entryId(head.hash) }));
  const sign = {
    kind: 'logSigned',
    body: { signedBy: ['scribe'], openItems: ['Mark without a meaning'], heads },
  } as const;
  const chain = chainOf([sign, note('lab result')], {
    after: before.findLast(({ rec }) => rec === written[0]?.rec),
    startMs: Date.UTC(2031, 4, 6, 13, 0, 0),
  });
  return [...before, ...chain.slice(0, 1), ...after, ...chain.slice(1)];
}

const idsOf = (entries: readonly Entry[]) => headsOf(entries).map(({ hash }) => entryId(hash));

describe('a signed version', () => {
  it('holds the signature and all that leads to the heads it names; what follows is an addendum', () => {
    const entries = signed([...written, ...others]);
    const [version] = signedVersions(viewOf(entries));
    expect(version).toMatchObject({ entryCount: 5, signedBy: ['scribe'], missing: [] });
    expect(version?.addenda.map(({ entry }) => entry.id)).toEqual([entries.at(-1)?.id]);
    expect(version?.code).toBe(headCode([entries[4]?.id ?? entryId('')]));
  });

  it('says what another recorder wrote that it did not know, and which head is not here', () => {
    const late = chainOf([note('kept apart')], { rec: ENGINEER });
    const [unknown] = signedVersions(viewOf(signed(written, late)));
    expect(unknown?.addenda.map(({ entry }) => entry.rec)).toContain(ENGINEER);
    const lacking = signed([...written, ...others]).filter(({ rec }) => rec !== ENGINEER);
    const [version] = signedVersions(viewOf(lacking));
    expect(version?.missing).toEqual([{ rec: ENGINEER, seq: 1 }]);
  });
});

describe('a code heard from somebody', () => {
  const entries = signed([...written, ...others]);
  const view = viewOf(entries);
  const heard = (code: string) => codeHeard(view, idsOf(entries), code);

  it('is that of the same record', () => {
    expect(heard(headCode(idsOf(entries)))).toEqual({ kind: 'same' });
  });

  it('is that of the version signed, with what stands here beside it', () => {
    const code = headCode([entries[4]?.id ?? entryId('')]);
    expect(heard(code)).toMatchObject({ kind: 'signed', more: 1, version: { code } });
  });

  it('is that of a record that ends earlier', () => {
    const second = written[1]?.id ?? entryId('');
    expect(heard(headCode([second]))).toEqual({ kind: 'earlier', rec: written[1]?.rec, seq: 2 });
  });

  it('is of something else, or no code', () => {
    expect(heard(headCode([entryId('5'.repeat(64))]))).toEqual({ kind: 'unknown' });
    expect(heard('seven')).toEqual({ kind: 'notACode' });
  });
});
