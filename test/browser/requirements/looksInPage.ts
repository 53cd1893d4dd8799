/** Red, green and blue, 0 to 255 each. */
type Rgb = readonly [number, number, number];

/** Words as they are drawn on one screen of Fly. */
export interface Written {
  readonly words: string;
  /** What they belong to. */
  readonly of: string;
  readonly role: 'label' | 'large' | 'text';
  readonly ink: Rgb;
  readonly ground: Rgb;
  /** Height of a capital H in this font at this size, in px. */
  readonly capitalPx: number;
  /** By how much the widest figure of the font is wider than the narrowest, in ems. */
  readonly figureSpread: number;
}

/** How one screen of Fly looks, from computed styles. */
export interface Looks {
  readonly written: readonly Written[];
  /** Edges of targets, each with the ground that they part it from. */
  readonly edges: readonly { readonly of: string; readonly ink: Rgb; readonly ground: Rgb }[];
  readonly thinnestEdgePx: number;
  /** Words of which the reader sees a part only. */
  readonly cut: readonly string[];
  /** Words that run into each other. */
  readonly collided: readonly string[];
  /** Hues in use, in twelfths of the colour circle. */
  readonly hues: readonly number[];
  readonly screenClass: string;
}

/** Runs in the page, so it must stand on its own. */
export function looksInPage(): Looks {
  const root = document.querySelector<HTMLElement>('[data-class]');
  if (root === null) throw new Error('Fly must be on the screen');
  const LARGE =
    'output[aria-label="Fuel-flow reduction"] > b, time, [data-instrument] [role="img"] b';
  const rgbOf = (css: string): readonly [number, number, number, number] => {
    const [red = 0, green = 0, blue = 0, alpha = 1] = (css.match(/[\d.]+/g) ?? []).map(Number);
    return [red, green, blue, alpha];
  };
  const opaque = (css: string): Rgb | null => {
    const [red, green, blue, alpha] = rgbOf(css);
    return alpha === 0 ? null : [red, green, blue];
  };
  const groundOf = (from: Element | null): Rgb => {
    for (let each = from; each !== null; each = each.parentElement) {
      const own = opaque(getComputedStyle(each).backgroundColor);
      if (own !== null) return own;
    }
    return [255, 255, 255];
  };
  const pen = new OffscreenCanvas(1, 1).getContext('2d');
  if (pen === null) throw new Error('the page must have a canvas');
  const LARGE_PX = 1000;
  /** Of a font at 1 px: rounding to whole pixels of a screen has no part in it. */
  const faces = new Map<string, { readonly capital: number; readonly spread: number }>();
  const faceOf = ({ fontWeight, fontFamily }: CSSStyleDeclaration) => {
    const font = `${fontWeight} ${LARGE_PX}px ${fontFamily}`;
    const known = faces.get(font);
    if (known !== undefined) return known;
    pen.font = font;
    const widths = '0123456789'.split('').map((digit) => pen.measureText(digit).width);
    const face = {
      capital: pen.measureText('H').actualBoundingBoxAscent / LARGE_PX,
      spread: (Math.max(...widths) - Math.min(...widths)) / LARGE_PX,
    };
    faces.set(font, face);
    return face;
  };
  /** Lines are laid out taller than letters are. */
  const lettersOf = (box: DOMRect, words: string, style: CSSStyleDeclaration) => {
    pen.font = `${style.fontWeight} ${style.fontSize} ${style.fontFamily}`;
    const at = pen.measureText(words);
    return {
      left: box.left,
      right: box.right,
      top: box.top + at.fontBoundingBoxAscent - at.actualBoundingBoxAscent,
      bottom: box.bottom - at.fontBoundingBoxDescent + at.actualBoundingBoxDescent,
    };
  };
  const nameOf = (each: Element): string =>
    each.closest('[data-act]')?.getAttribute('data-act') ??
    each.closest('section')?.getAttribute('aria-label') ??
    'Fly';
  const visible = (each: Element): boolean =>
    each.checkVisibility({ visibilityProperty: true, opacityProperty: true });
  const roleOf = (each: Element): Written['role'] => {
    if (each.closest('[data-form="digit"]') !== null && /^\d$/.test(each.textContent ?? '')) {
      return 'large';
    }
    const large = each.closest(LARGE);
    // Times stand in lists too, as words among words: the clock alone is large.
    if (
      large !== null &&
      (large.tagName !== 'TIME' ||
        large.closest('p')?.nextElementSibling?.matches('[data-saved]') === true)
    ) {
      return 'large';
    }
    const tile = each.closest('[data-act^="tile-"]');
    return tile !== null && each === tile.firstElementChild ? 'label' : 'text';
  };
  const written: Written[] = [];
  const cut: string[] = [];
  const lines: {
    readonly words: string;
    readonly node: Node;
    readonly box: ReturnType<typeof lettersOf>;
    readonly clock: Element | null;
  }[] = [];
  const walker = document.createTreeWalker(root, NodeFilter.SHOW_TEXT);
  for (let node = walker.nextNode(); node !== null; node = walker.nextNode()) {
    const { parentElement } = node;
    const words = (node.textContent ?? '').trim();
    if (words === '' || parentElement === null || !visible(parentElement)) continue;
    const range = document.createRange();
    range.selectNodeContents(node);
    const style = getComputedStyle(parentElement);
    // What stands wholly outside a place that clips is meant not to be seen.
    const shown = [...range.getClientRects()].filter((box) => {
      for (let each: Element | null = parentElement; each !== null; each = each.parentElement) {
        if (getComputedStyle(each).overflowX === 'visible') continue;
        const clip = each.getBoundingClientRect();
        const { top, bottom } = lettersOf(box, words, style);
        const outside =
          top >= clip.bottom - 1 || bottom <= clip.top + 1 || box.left >= clip.right - 1;
        if (outside) return false;
        // A large figure hangs a little to the left, by the empty part of its own width.
        if (
          box.right > clip.right + 1 ||
          box.left < clip.left - 4 ||
          bottom > clip.bottom + 2 ||
          top < clip.top - 2
        ) {
          cut.push(`${nameOf(parentElement)}: ${words}`);
        }
      }
      return box.width > 0;
    });
    if (shown.length === 0) continue;
    if (words.endsWith('\u2026')) cut.push(`${nameOf(parentElement)}: ${words}`);
    written.push({
      words,
      of: nameOf(parentElement),
      role: roleOf(parentElement),
      ink: opaque(style.color) ?? [0, 0, 0],
      ground: groundOf(parentElement),
      capitalPx: faceOf(style).capital * Number.parseFloat(style.fontSize),
      figureSpread: faceOf(style).spread,
    });
    const clock = parentElement.closest('time');
    const clips = parentElement.closest('section')?.getBoundingClientRect();
    lines.push(
      ...shown.map((box) => {
        const letters = lettersOf(box, words, style);
        const right = Math.min(letters.right, clips?.right ?? letters.right);
        return { words, node, clock, box: { ...letters, right } };
      }),
    );
  }
  /** The tail of a g may come near the letters of the next line. */
  const TOUCHING_PX = 4;
  const collided = lines.flatMap((a, index) =>
    lines.slice(index + 1).flatMap((b) => {
      const across = Math.min(a.box.right, b.box.right) - Math.max(a.box.left, b.box.left);
      const down = Math.min(a.box.bottom, b.box.bottom) - Math.max(a.box.top, b.box.top);
      const apart = a.node !== b.node && (a.clock === null || a.clock !== b.clock);
      return apart && across > 1 && down > TOUCHING_PX ? [`${a.words} | ${b.words}`] : [];
    }),
  );
  const drawn = [...root.querySelectorAll('*')].filter(visible);
  const edges = drawn
    .filter((each) => each.matches('[data-act]'))
    .flatMap((each) => {
      const style = getComputedStyle(each);
      const widest = (['Top', 'Right', 'Bottom', 'Left'] as const)
        .map((side) => ({
          px: Number.parseFloat(style[`border${side}Width`]),
          ink: opaque(style[`border${side}Color`]),
        }))
        .toSorted((a, b) => b.px - a.px)[0];
      const ink = widest?.ink ?? null;
      return widest === undefined || widest.px === 0 || ink === null
        ? []
        : [{ of: nameOf(each), ink, px: widest.px, ground: groundOf(each.parentElement) }];
    });
  const hueOf = ([red, green, blue]: Rgb): number | null => {
    const most = Math.max(red, green, blue);
    const range = most - Math.min(red, green, blue);
    if (range < 40) return null;
    const sixth =
      most === red
        ? (green - blue) / range
        : most === green
          ? 2 + (blue - red) / range
          : 4 + (red - green) / range;
    return Math.round(((sixth + 6) % 6) * 2) % 12;
  };
  const hues = drawn.flatMap((each) => {
    const { color, backgroundColor, borderTopColor, borderTopWidth, fill, stroke } =
      getComputedStyle(each);
    const isShape = each instanceof SVGGeometryElement;
    const used = [
      ...(isShape ? [fill, stroke] : [color, backgroundColor]),
      ...(isShape || borderTopWidth === '0px' ? [] : [borderTopColor]),
    ].filter((css) => css.startsWith('rgb'));
    return used.flatMap((css) => {
      const solid = opaque(css);
      const hue = solid === null ? null : hueOf(solid);
      return hue === null ? [] : [hue];
    });
  });
  return {
    written,
    edges,
    thinnestEdgePx: Math.min(...edges.map(({ px }) => px)),
    // A row of the log is a short form: the entry is said whole once it is chosen.
    cut: [...new Set(cut)].filter((each) => !each.startsWith('log-')),
    collided: [...new Set(collided)],
    hues: [...new Set(hues)].toSorted((a, b) => a - b),
    screenClass: root.dataset['class'] ?? '',
  };
}
