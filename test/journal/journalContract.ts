import { describe, expect, it } from 'vitest';
import { flightId } from '../../src/record/brand.ts';
import { checkChains } from '../../src/record/chain.ts';
import { flyOn, setUpTablet, type Tablet } from './contractTablet.ts';
import { closing, gearMoved, noted, opening, SCRIBE, sheet, withdrawing } from './smallFlight.ts';
import { twoTabletsContract } from './twoTabletsContract.ts';

/** What screens may rely on, whatever lies beneath. `newTablet` gives a tablet on which nothing was kept yet. */
export function journalContract(name: string, newTablet: () => Tablet): void {
  const setUp = () => setUpTablet(newTablet());
  const flying = () => flyOn(newTablet());

  describe(`journal (${name})`, () => {
    it('opens a flight with its sheet as the first entry', async () => {
      const { journal } = await flying();
      const [first, ...others] = journal.entries();
      expect(others).toEqual([]);
      expect(first).toMatchObject({
        kind: 'flightOpened',
        flight: journal.flight,
        rec: journal.recorder(),
        seq: 1,
        prev: null,
        ...SCRIBE,
        body: { title: 'Wing sweep 3', nature: 'flight', date: '2031-05-06', device: 'tablet 1' },
      });
    });

    it('gives an entry once it is kept, chained to the one before', async () => {
      const { journal, now } = await flying();
      const first = await journal.append(gearMoved(now()));
      const second = await journal.append(gearMoved(now(), 'down'));
      expect(journal.entries().slice(1)).toEqual([first, second]);
      expect([first.seq, second.seq]).toEqual([2, 3]);
      expect(second.prev).toBe(first.id);
      expect(checkChains(journal.entries())).toEqual([]);
    });

    it('keeps the order of touches that come faster than the disk', async () => {
      const { journal, now } = await flying();
      const given = Array.from({ length: 80 }, (_, index) => noted(now(), `touch ${index}`));
      const entries = await Promise.all(given.map((draft) => journal.append(draft)));
      expect(entries.map((entry) => entry.seq)).toEqual(given.map((_, index) => index + 2));
      expect(entries.map((entry) => entry.kind === 'deviceNoted' && entry.body.words)).toEqual(
        given.map((_, index) => `touch ${index}`),
      );
      expect(journal.entries().slice(1)).toEqual(entries);
      expect(journal.status().pending).toEqual([]);
    });

    it('shows the same array until something is added, and never changes one that it gave', async () => {
      const { journal, now } = await flying();
      const before = journal.entries();
      expect(journal.entries()).toBe(before);
      await journal.append(gearMoved(now()));
      expect(journal.entries()).not.toBe(before);
      expect(before).toHaveLength(1);
    });

    it('gives what it holds of a flight to be read, open or not, and nothing of one that it has not', async () => {
      const { shelf, journal, now } = await flying();
      await journal.append(gearMoved(now()));
      const written = journal.entries();
      expect(await shelf.entriesOf(journal.flight)).toEqual(written);
      await journal.close();
      expect(await shelf.entriesOf(journal.flight)).toEqual(written);
      expect(await shelf.entriesOf(flightId('0'.repeat(32)))).toEqual([]);
    });

    it('calls listeners after each save until they stop', async () => {
      const { journal, now } = await flying();
      const seen: number[] = [];
      const stop = journal.subscribe(() => seen.push(journal.entries().length));
      await journal.append(gearMoved(now()));
      expect(seen.at(-1)).toBe(2);
      stop();
      const calls = seen.length;
      await journal.append(gearMoved(now(), 'down'));
      expect(seen).toHaveLength(calls);
    });

    it('says what is saved and where the chain ends', async () => {
      const { journal, now } = await flying();
      const last = await journal.append(gearMoved(now()));
      const status = journal.status();
      expect(status).toEqual({
        saved: 2,
        pending: [],
        unsaved: [],
        writer: { kind: 'writing' },
        trouble: null,
        head: { seq: 2, hash: last.id },
      });
      expect(journal.status()).toBe(status);
    });

    it('has every line byte for byte after a restart, and goes on where it was', async () => {
      const { journal, now, time, tablet } = await flying();
      await journal.append(gearMoved(now()));
      const lines = journal.entries().map(({ line }) => line);
      await journal.close();

      const again = await (await tablet(time.clock)).journalOf(journal.flight);
      expect(again.entries().map(({ line }) => line)).toEqual(lines);
      expect(again.author()).toEqual(SCRIBE);
      const third = await again.append(gearMoved(now(), 'down'));
      expect(third).toMatchObject({ seq: 3, rec: journal.recorder(), ...SCRIBE });
      expect(checkChains(again.entries())).toEqual([]);
    });

    it('writes each entry under who holds the pen at the touch', async () => {
      const { journal, now } = await flying();
      const before = journal.append(gearMoved(now()));
      journal.setAuthor({ author: 'B. Example', role: 'pilot' });
      const after = journal.append(gearMoved(now(), 'down'));
      expect((await before).author).toBe('A. Example');
      expect(await after).toMatchObject({ author: 'B. Example', role: 'pilot' });
    });

    it('keeps its order when the clock goes back, and the raw time with it', async () => {
      const { journal, now, time } = await flying();
      const first = await journal.append(gearMoved(now()));
      const backMs = time.clock.now() - 3_600_000;
      time.setWall(backMs);
      const second = await journal.append(gearMoved(now(), 'down'));
      expect(second.wall).toBe(backMs);
      expect(second.ord).toBe(first.ord + 1);
      expect(journal.entries().at(-1)).toBe(second);
    });

    it('refuses a draft that is no entry, and takes the next', async () => {
      const { journal, now } = await flying();
      const tooLong = noted(now(), 'x'.repeat(3_000));
      await expect(journal.append(tooLong)).rejects.toThrow(RangeError);
      const next = await journal.append(gearMoved(now()));
      expect(next.seq).toBe(2);
      expect(journal.status().pending).toEqual([]);
    });

    it('refuses to write once it is closed', async () => {
      const { journal, now } = await flying();
      await journal.close();
      await expect(journal.append(gearMoved(now()))).rejects.toThrow('may not write');
    });

    describe('with entries of another tablet', () => twoTabletsContract(newTablet));

    describe('shelf', () => {
      it('gives the same journal until it is closed, and refuses a flight that it does not have', async () => {
        const { shelf, journal } = await flying();
        expect(await shelf.journalOf(journal.flight)).toBe(journal);
        await journal.close();
        expect(await shelf.journalOf(journal.flight)).not.toBe(journal);
        await expect(shelf.journalOf(flightId('0'.repeat(32)))).rejects.toThrow(RangeError);
      });

      it('remembers the open flight until it is closed, and again when closing is withdrawn', async () => {
        const { shelf, journal, now } = await flying();
        expect(await shelf.openedFlight()).toBe(journal.flight);
        const closed = await journal.append(closing(now()));
        expect(await shelf.openedFlight()).toBeNull();
        expect(await shelf.flights()).toMatchObject([{ state: 'closed', entries: 2 }]);
        await journal.append(withdrawing(now(), closed.id));
        expect(await shelf.openedFlight()).toBe(journal.flight);
        expect(await shelf.flights()).toMatchObject([{ state: 'open', entries: 3 }]);
      });

      it('lists an aborted flight as aborted and a signed one as signed', async () => {
        const { shelf, journal, now, time } = await flying();
        time.advance(1_000);
        const second = await shelf.openFlight({ ...opening(now()), title: 'Second' });
        await journal.append(closing(now(), 'aborted'));
        await second.append(closing(now()));
        const body = { signedBy: ['A. Example'], openItems: [], heads: [] };
        await second.append({ kind: 'logSigned', body, stamp: now() });
        expect(await shelf.flights()).toMatchObject([
          { title: 'Second', state: 'signed', recordedHere: true, nature: 'flight' },
          { title: 'Wing sweep 3', state: 'aborted', recordedHere: true, date: '2031-05-06' },
        ]);
      });

      it('keeps flight sheets in preparation until they are removed', async () => {
        const { shelf, time, tablet } = await setUp();
        await shelf.keepSheet({ ...sheet, title: 'Old title' });
        await shelf.keepSheet(sheet);
        await shelf.keepSheet({ ...sheet, id: 'sheet-2' });
        await shelf.removeSheet('sheet-2');
        expect(await shelf.sheets()).toEqual([sheet]);
        expect(await (await tablet(time.clock)).sheets()).toEqual([sheet]);
      });
    });
  });
}
