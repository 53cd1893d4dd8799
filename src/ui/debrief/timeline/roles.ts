/** The role tokens as a canvas needs them: the theme's own values, read once for each drawing. */
export interface Roles {
  readonly ground: string;
  readonly ink: string;
  readonly quiet: string;
  readonly rule: string;
  readonly hair: string;
  readonly mark: string;
  readonly openInk: string;
  readonly lam: string;
  readonly int: string;
  /** Sun has no half tone: the intermittent fill is a hatch there. */
  readonly isIntHatched: boolean;
  readonly trb: string;
  readonly band95: string;
  readonly band68: string;
  /** Two tones only: bands are outlined, not filled. */
  readonly areBandsOutlined: boolean;
  readonly font: string;
}

export function readRoles(element: Element): Roles {
  const style = getComputedStyle(element);
  const role = (name: string, fallback: string): string =>
    style.getPropertyValue(name).trim() || fallback;
  const intPaint = role('--int-paint', role('--int', 'gray'));
  const ground = role('--ground', 'white');
  return {
    ground,
    ink: role('--ink', 'black'),
    quiet: role('--quiet', 'black'),
    rule: role('--rule', 'gray'),
    hair: role('--hair', 'silver'),
    mark: role('--mark', 'black'),
    openInk: role('--open-ink', 'white'),
    lam: role('--lam', 'black'),
    int: intPaint.startsWith('url') ? role('--int', 'black') : intPaint,
    isIntHatched: intPaint.startsWith('url'),
    trb: role('--trb', 'black'),
    band95: role('--band95', 'silver'),
    band68: role('--band68', 'gray'),
    areBandsOutlined: role('--band95', 'silver') === ground,
    font: role('--sans', 'sans-serif'),
  };
}
