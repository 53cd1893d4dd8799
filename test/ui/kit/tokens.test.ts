import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { runInNewContext } from 'node:vm';
import { describe, expect, it } from 'vitest';
import { THEME_WORDS, THEMES, type Theme } from '../../../src/ui/kit/settings.ts';
import { contrast, luminance, type Rgb } from './contrast.ts';

const ROOT = join(import.meta.dirname, '../../..');
const CSS = readFileSync(join(ROOT, 'src/ui/tokens.css'), 'utf8');
const FACE = readFileSync(join(ROOT, 'public/face.js'), 'utf8');

/** The roles of a theme, by name, as the style sheet writes them. */
function rolesOf(theme: Theme): ReadonlyMap<string, string> {
  const block = new RegExp(`\\[data-theme='${theme}'\\] \\{([^}]*)\\}`).exec(CSS)?.[1] ?? '';
  const roles = [...block.matchAll(/--([\w-]+):\s*([^;]+);/g)];
  return new Map(roles.map(([, name = '', value = '']) => [name, value]));
}

function rgbOf(hex: string): Rgb {
  const part = (at: number): number => Number.parseInt(hex.slice(at, at + 2), 16);
  return [part(1), part(3), part(5)];
}

function role(theme: Theme, name: string): string {
  const value = rolesOf(theme).get(name);
  if (value === undefined) throw new RangeError(`${theme} must say --${name}`);
  return value;
}

const TEXT = [
  ['ink', 'ground'],
  ['quiet', 'ground'],
  ['open-ink', 'open'],
  ['risk-ink', 'risk'],
] as const;
const MARKS = ['rule', 'hair', 'open', 'lam', 'int', 'trb', 'mark'] as const;

describe.each(THEMES)('theme %s', (theme) => {
  it('says every role that Day says', () => {
    expect([...rolesOf(theme).keys()]).toEqual(expect.arrayContaining([...rolesOf('day').keys()]));
  });

  it.each(TEXT)('sets %s on %s at 7:1 at least (R23, R24, R25)', (ink, ground) => {
    const least = theme === 'sun' && ink === 'ink' ? 21 : 7;
    expect(contrast(rgbOf(role(theme, ink)), rgbOf(role(theme, ground)))).toBeGreaterThanOrEqual(
      least,
    );
  });

  it.each(MARKS)('draws %s at 3:1 at least to its ground (R26)', (mark) => {
    expect(contrast(rgbOf(role(theme, mark)), rgbOf(role(theme, 'ground')))).toBeGreaterThanOrEqual(
      3,
    );
  });

  it('is known before the first paint', () => {
    const dataset: Record<string, string> = {};
    runInNewContext(FACE, {
      document: { documentElement: { dataset, style: { setProperty: () => undefined } } },
      localStorage: { getItem: (key: string) => (key === 'kneeline-theme' ? theme : null) },
      screen: { width: 1180, height: 820 },
    });
    expect(dataset).toEqual({ theme });
  });

  it('has words of its own', () => {
    expect(Object.values(THEME_WORDS).filter((words) => words === THEME_WORDS[theme])).toHaveLength(
      1,
    );
  });
});

describe('the night themes', () => {
  it.each(['night', 'night-red'] as const)('%s shows nothing above 0.36 (R25)', (theme) => {
    const bright = [...rolesOf(theme)].filter(
      ([, value]) => value.startsWith('#') && luminance(rgbOf(value)) > 0.36,
    );
    expect(bright).toEqual([]);
  });

  it('red-biased is of one hue: the red part is nearly twice the others in every colour', () => {
    for (const value of rolesOf('night-red').values()) {
      if (!value.startsWith('#') || value === '#000000') continue;
      const [red = 0, green = 0, blue = 0] = [1, 3, 5].map((at) =>
        Number.parseInt(value.slice(at, at + 2), 16),
      );
      expect(red / Math.max(green, blue)).toBeGreaterThan(1.9);
    }
  });
});

describe('Sun', () => {
  it('has two tones, but for the plate of data at risk (R24)', () => {
    const tones = [...rolesOf('sun')].filter(
      ([name, value]) => value.startsWith('#') && name !== 'risk',
    );
    expect(new Set(tones.map(([, value]) => value))).toEqual(new Set(['#ffffff', '#000000']));
  });
});
