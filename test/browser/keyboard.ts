import type { Page } from 'playwright-core';

const FARTHEST_TABS = 400;
const MOST_CHOICES = 20;

/** Name of the target that holds the focus. */
export async function focused(page: Page): Promise<string> {
  return page.evaluate(
    () => document.activeElement?.closest<HTMLElement>('[data-act]')?.dataset['act'] ?? '',
  );
}

/** Tab until the focus stands there, backwards with `Shift+Tab`; a choice is reached by arrows within its group. */
export async function reach(
  page: Page,
  act: string,
  tab: 'Tab' | 'Shift+Tab' = 'Tab',
): Promise<void> {
  const group = act.slice(0, act.lastIndexOf('='));
  for (let tabs = 0; tabs < FARTHEST_TABS; tabs += 1) {
    const at = await focused(page);
    if (at === act) return;
    const isChoice = await page.evaluate(
      () => document.activeElement?.matches('input[type=radio]') === true,
    );
    if (isChoice && group !== '' && at.startsWith(`${group}=`)) {
      for (let step = 0; step < MOST_CHOICES; step += 1) {
        await page.keyboard.press('ArrowRight');
        if ((await focused(page)) === act) return;
      }
    }
    await page.keyboard.press(tab);
  }
  throw new Error(`${act} is not reached by keyboard`);
}

/** Reaches a key or a choice and presses it. */
export async function press(
  page: Page,
  act: string,
  tab: 'Tab' | 'Shift+Tab' = 'Tab',
): Promise<void> {
  await reach(page, act, tab);
  const isRadio = await page.evaluate(
    () => document.activeElement?.matches('input[type=radio]') === true,
  );
  await page.keyboard.press(isRadio ? 'Space' : 'Enter');
}

/** Reaches a field and types over what stands there. */
export async function type(page: Page, act: string, text: string): Promise<void> {
  await reach(page, act);
  await page.keyboard.press('Control+A');
  await page.keyboard.type(text);
}
