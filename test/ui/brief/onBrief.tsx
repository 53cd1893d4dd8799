import { render, screen } from '@testing-library/react';
import { userEvent } from '@testing-library/user-event';
import { useState } from 'react';
import type { Journal, Shelf } from '../../../src/journal/journal.ts';
import { Brief } from '../../../src/ui/brief/Brief.tsx';
import type { DeviceTools } from '../../../src/ui/brief/device/deviceLines.ts';
import { openSettings } from '../../../src/ui/kit/settings.ts';
import { memoryShelf, nothingKept, type Kept } from '../../journal/memoryJournal.ts';
import { testTime, type TestTime } from '../../journal/testTime.ts';

const SOUND: DeviceTools = {
  check: async () => ({
    persisted: true,
    freeBytes: 18e9,
    write: { kind: 'readBack', durationMs: 8 },
  }),
  keepStorage: async () => true,
  offline: async () => ({ kind: 'ready', build: 'x', files: 214 }),
};

export interface OnBrief {
  readonly user: ReturnType<typeof userEvent.setup>;
  readonly shelf: Shelf;
  readonly kept: Kept;
  readonly time: TestTime;
  readonly journal: () => Journal | null;
  /** As a reload does: the screen is built anew from what was kept. */
  readonly reload: () => Promise<void>;
  /** Touches the target of that name. */
  readonly press: (act: string) => Promise<void>;
  /** Puts a text into the field of that name, in place of what is there. */
  readonly type: (act: string, text: string) => Promise<void>;
  readonly field: (act: string) => HTMLInputElement;
}

/** Brief on a memory shelf, driven by the names of its targets. */
export async function onBrief(
  given: {
    readonly kept?: Kept;
    readonly journal?: (shelf: Shelf) => Promise<Journal>;
    readonly tools?: Partial<DeviceTools>;
  } = {},
): Promise<OnBrief> {
  sessionStorage.clear();
  const kept = given.kept ?? nothingKept();
  const time = testTime(Date.UTC(2032, 5, 2, 21, 35, 0));
  const shelf = memoryShelf({ clock: time.clock, device: 'scribe tablet', kept });
  const user = userEvent.setup({ delay: null });
  let open = given.journal === undefined ? null : await given.journal(shelf);
  const settings = openSettings(localStorage);
  const tools = { ...SOUND, ...given.tools };

  function Screen() {
    const [journal, setJournal] = useState(open);
    return (
      <Brief
        shelf={shelf}
        journal={journal}
        clock={time.clock}
        settings={settings}
        tools={tools}
        onOpened={(opened) => {
          open = opened;
          setJournal(opened);
        }}
        onFly={() => undefined}
        onDebrief={() => undefined}
      />
    );
  }

  const view = render(<Screen key="first" />);
  const find = (act: string) => document.querySelector<HTMLElement>(`[data-act="${act}"]`);
  const found = async (act: string) =>
    screen.findByText((_, element) => element !== null && element === find(act));
  await screen.findByRole('heading', { name: 'Brief' });
  return {
    user,
    shelf,
    kept,
    time,
    journal: () => open,
    reload: async () => {
      view.rerender(<Screen key={crypto.randomUUID()} />);
      await screen.findByRole('heading', { name: 'Brief' });
    },
    press: async (act) => user.click(await found(act)),
    type: async (act, text) => {
      const element = await found(act);
      await user.clear(element);
      if (text !== '') {
        await user.type(element, text);
      }
    },
    field: (act) => {
      const element = find(act);
      if (!(element instanceof HTMLInputElement)) {
        throw new Error(`no input is called ${act}`);
      }
      return element;
    },
  };
}
