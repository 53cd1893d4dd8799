import type { Shelf } from '../../../journal/journal.ts';
import type { FlightSheet } from '../../../record/sheet.ts';

const RETRY_MS = 2_000;
const UNDO_DEPTH = 50;

export interface KeeperState {
  readonly sheet: FlightSheet;
  /** Whether the sheet as it stands is on disk. */
  readonly saved: boolean;
  /** Set from the first refused write until one succeeds. */
  readonly trouble: boolean;
  readonly canUndo: boolean;
}

/**
 * A flight sheet in preparation: every change is kept on the shelf at once, one write at a time, the newest state
 * wins. A refused write is tried again; the change stays on the screen meanwhile.
 */
export class SheetKeeper {
  readonly #shelf: Pick<Shelf, 'keepSheet'>;
  readonly #listeners = new Set<() => void>();
  #state: KeeperState;
  #before: readonly FlightSheet[] = [];
  #writing = false;

  constructor(shelf: Pick<Shelf, 'keepSheet'>, sheet: FlightSheet) {
    this.#shelf = shelf;
    this.#state = { sheet, saved: true, trouble: false, canUndo: false };
  }

  readonly get = (): KeeperState => this.#state;

  readonly subscribe = (listener: () => void): (() => void) => {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  };

  readonly replace = (sheet: FlightSheet): void => {
    this.#before = [...this.#before, this.#state.sheet].slice(-UNDO_DEPTH);
    this.#show(sheet);
  };

  readonly undo = (): void => {
    const last = this.#before.at(-1);
    if (last !== undefined) {
      this.#before = this.#before.slice(0, -1);
      this.#show(last);
    }
  };

  #show(sheet: FlightSheet): void {
    this.#set({ sheet, saved: false, canUndo: this.#before.length > 0 });
    void this.#write();
  }

  async #write(): Promise<void> {
    if (this.#writing) {
      return;
    }
    this.#writing = true;
    const { sheet } = this.#state;
    let kept = true;
    try {
      await this.#shelf.keepSheet(sheet);
    } catch {
      kept = false;
    }
    this.#writing = false;
    if (!kept) {
      this.#set({ trouble: true });
      setTimeout(() => void this.#write(), RETRY_MS);
    } else if (this.#state.sheet === sheet) {
      this.#set({ saved: true, trouble: false });
    } else {
      await this.#write();
    }
  }

  #set(change: Partial<KeeperState>): void {
    this.#state = { ...this.#state, ...change };
    for (const listener of this.#listeners) {
      listener();
    }
  }
}
