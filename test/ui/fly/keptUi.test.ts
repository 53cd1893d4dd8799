import { describe, expect, it } from 'vitest';
import { entryId, epochMs } from '../../../src/record/brand.ts';
import { flyMoved, HOME, type FlyMove, type FlyUi } from '../../../src/ui/fly/flyState.ts';
import { keepUi, keptUi } from '../../../src/ui/fly/keptUi.ts';

const NOW = epochMs(Date.UTC(2032, 5, 2, 12, 0, 0));
const STAMP = { wall: NOW, mono: 12.5, boot: 'b1' };
const ENTRY = entryId('ab'.repeat(32));

function storage() {
  const texts = new Map<string, string>();
  return {
    texts,
    getItem: (key: string) => texts.get(key) ?? null,
    setItem: (key: string, text: string) => void texts.set(key, text),
  };
}

function after(...moves: readonly FlyMove[]): FlyUi {
  return moves.reduce(flyMoved, HOME);
}

const onFuelPad = after(
  { do: 'open', pad: { kind: 'readings', of: 'fuel', step: 1, glance: NOW } },
  { do: 'boxes', boxes: { digits: '08', minus: false, stepped: false }, stamp: STAMP },
  { do: 'point', point: 'TP03' },
);

describe('where Fly stood', () => {
  it.each([
    ['a number pad, half keyed', onFuelPad],
    [
      'a card, half drawn',
      after(
        { do: 'open', pad: { kind: 'sketch', target: ENTRY } },
        { do: 'ink', key: ENTRY, ink: { strokes: [[1, 2, 3, 4]], first: STAMP } },
      ),
    ],
    [
      'a count, with its details beside it',
      after(
        { do: 'panel', panel: { kind: 'detail', target: ENTRY, field: 2, page: 1 } },
        { do: 'open', pad: { kind: 'count', target: ENTRY, stamp: STAMP, wing: 'R' } },
      ),
    ],
    [
      'the wing, a panel chosen',
      after(
        { do: 'open', pad: { kind: 'wing', wing: 'L' } },
        { do: 'wingPanel', wingPanel: { panel: 'L2', stamp: STAMP, used: false } },
      ),
    ],
    [
      'words, half typed',
      after(
        { do: 'open', pad: { kind: 'text', target: ENTRY, path: 'note', label: 'Note' } },
        { do: 'keepText', key: `${ENTRY}-note`, text: 'thin ci' },
      ),
    ],
  ])('comes back within half a minute: %s', (_, ui) => {
    const kept = storage();
    keepUi(kept, 'f1', ui, NOW);
    const back = keptUi(kept, 'f1', epochMs(NOW + 30_000));
    expect({ ...back, drafts: ui.drafts }).toEqual(ui);
  });

  it('is home after half a minute, with what was half-done', () => {
    const kept = storage();
    keepUi(kept, 'f1', onFuelPad, NOW);
    expect(keptUi(kept, 'f1', epochMs(NOW + 30_001))).toEqual({
      ...HOME,
      drafts: new Map([['fuel-1', { digits: '08', minus: false, stepped: false }]]),
      chosenPoint: 'TP03',
    });
  });

  it('is home on a clock that went back, on another flight, and where it cannot be read', () => {
    const kept = storage();
    keepUi(kept, 'f1', onFuelPad, NOW);
    expect(keptUi(kept, 'f1', epochMs(NOW - 1)).pad).toBeNull();
    expect(keptUi(kept, 'f2', NOW)).toEqual(HOME);
    for (const text of ['', '{', '{"at":1}', '[]', 'null']) {
      kept.texts.set('kneeline-fly', text);
      expect(keptUi(kept, 'f1', NOW)).toEqual(HOME);
    }
  });

  it('leaves out a pad that it cannot read, and keeps the rest', () => {
    const kept = storage();
    keepUi(kept, 'f1', onFuelPad, NOW);
    const text = kept.texts.get('kneeline-fly') ?? '';
    kept.texts.set('kneeline-fly', text.replace('"of":"fuel"', '"of":"kettle"'));
    expect(keptUi(kept, 'f1', NOW)).toMatchObject({ pad: null, chosenPoint: 'TP03' });
  });
});
