import { expect, it } from 'vitest';
import { checkChains } from '../../src/record/chain.ts';
import type { Entry } from '../../src/record/entry.ts';
import { parseEntry } from '../../src/record/parse.ts';
import type { Journal } from '../../src/journal/journal.ts';
import { flyOn, setUpTablet, type Tablet } from './contractTablet.ts';
import { gearMoved, opening } from './smallFlight.ts';

const DAY_MS = 86_400_000;

const kinds = (journal: Journal) => journal.entries().map((entry) => entry.kind);
const ids = (entries: readonly Entry[]) => entries.map((entry) => entry.id);

/** The part of the contract about entries that came from another recorder. */
export function twoTabletsContract(newTablet: () => Tablet): void {
  const twoTablets = async () => {
    const here = await flyOn(newTablet());
    const there = await setUpTablet(newTablet());
    await there.shelf.takeIn(here.journal.entries());
    const other = await there.shelf.journalOf(here.journal.flight);
    other.setAuthor({ author: 'B. Example', role: 'analyst' });
    return { here, there, other };
  };

  it('takes a flight in, and again without change', async () => {
    const { here, there } = await twoTablets();
    const outcome = { added: 0, known: 1 };
    expect(await there.shelf.takeIn(here.journal.entries())).toEqual({
      flight: here.journal.flight,
      outcome,
    });
    expect(await there.shelf.flights()).toMatchObject([
      { flight: here.journal.flight, entries: 1, recordedHere: false, state: 'open' },
    ]);
    expect(await there.shelf.openedFlight()).toBeNull();
  });

  it('joins as a recorder of its own with the first entry written here', async () => {
    const { here, other } = await twoTablets();
    expect(other.recorder()).toBeNull();
    const written = await other.append(gearMoved(here.now()));
    expect(kinds(other)).toEqual(['flightOpened', 'recorderJoined', 'gearMoved']);
    expect(written).toMatchObject({ seq: 2, author: 'B. Example' });
    expect(other.recorder()).toBe(written.rec);
    expect(written.rec).not.toBe(here.journal.recorder());
    expect(checkChains(other.entries())).toEqual([]);
  });

  it('joins for the purpose that the screen gives', async () => {
    const { here, other } = await twoTablets();
    const body = { device: 'desk', purpose: 'transcription' } as const;
    await other.append({ kind: 'recorderJoined', body, stamp: here.now() });
    expect(kinds(other)).toEqual(['flightOpened', 'recorderJoined']);
  });

  it('joins in flight under a role, and has the flight open again after a restart', async () => {
    const { here, there, other } = await twoTablets();
    const { flight } = here.journal;
    await other.close();
    const author = { author: 'E2', role: 'wing engineer, left' };
    const joining = { flight, device: 'engineer tablet', author, stamp: there.now() };
    const joined = await there.shelf.joinFlight(joining);
    expect(joined.entries().at(-1)).toMatchObject({
      ...author,
      kind: 'recorderJoined',
      body: { device: 'engineer tablet', purpose: 'inFlight' },
    });
    await joined.append(gearMoved(there.now()));
    expect(kinds(joined)).toEqual(['flightOpened', 'recorderJoined', 'gearMoved']);
    await joined.close();
    const restarted = await there.tablet(there.time.clock);
    expect(await restarted.openedFlight()).toBe(flight);
    const again = await restarted.journalOf(flight);
    expect(again.author()).toEqual(author);
    expect(again.recorder()).toBe(joined.recorder());
  });

  it('flies on a flight that only had notes of a debrief here', async () => {
    const { here, there, other } = await twoTablets();
    const { flight } = here.journal;
    await other.append(gearMoved(there.now()));
    expect(await there.shelf.openedFlight()).toBeNull();
    const author = { author: 'E2', role: 'wing engineer, left' };
    await there.shelf.joinFlight({ flight, device: 'tablet', author, stamp: there.now() });
    await other.close();
    const restarted = await there.tablet(there.time.clock);
    expect(await restarted.openedFlight()).toBe(flight);
  });

  it('joins a flight once, and no flight that it does not have', async () => {
    const { here, there } = await twoTablets();
    const { flight } = here.journal;
    const author = { author: 'E2', role: 'wing engineer, right' };
    const joining = { flight, device: 'engineer tablet', author, stamp: there.now() };
    const joined = await there.shelf.joinFlight(joining);
    await there.shelf.joinFlight({ ...joining, author: { ...author, author: 'E1' } });
    expect(kinds(joined)).toEqual(['flightOpened', 'recorderJoined', 'scribeChanged']);
    expect(joined.author().author).toBe('E1');
    const stranger = await here.shelf.openFlight(opening(here.now()));
    await expect(there.shelf.joinFlight({ ...joining, flight: stranger.flight })).rejects.toThrow(
      RangeError,
    );
  });

  it('has the same entries on both sides, whoever merges first', async () => {
    const { here, other } = await twoTablets();
    await other.append(gearMoved(here.now()));
    await here.journal.append(gearMoved(here.now(), 'down'));
    const fromHere = here.journal.entries();
    expect(await here.journal.merge(other.entries())).toEqual({ added: 2, known: 1 });
    expect(await other.merge(fromHere)).toEqual({ added: 1, known: 1 });
    expect(ids(other.entries())).toEqual(ids(here.journal.entries()));
    expect(here.journal.status().saved).toBe(4);
  });

  it('orders later entries after what it has seen', async () => {
    const { here, there, other } = await twoTablets();
    there.time.setWall(here.time.clock.now() + DAY_MS / 2);
    const ahead = await other.append(gearMoved(there.now()));
    await here.journal.merge(other.entries());
    const next = await here.journal.append(gearMoved(here.now(), 'down'));
    expect(next.ord).toBe(ahead.ord + 1);
  });

  it('does not follow a clock that is more than a day ahead', async () => {
    const { here, there, other } = await twoTablets();
    there.time.setWall(here.time.clock.now() + 2 * DAY_MS);
    await other.append(gearMoved(there.now()));
    await here.journal.merge(other.entries());
    here.time.advance(5_000);
    const next = await here.journal.append(gearMoved(here.now(), 'down'));
    expect(next.ord).toBe(here.time.clock.now());
  });

  it('keeps what was merged after a restart', async () => {
    const { here, other } = await twoTablets();
    await other.append(gearMoved(here.now()));
    await here.journal.merge(other.entries());
    const lines = here.journal.entries().map(({ line }) => line);
    await here.journal.close();
    const again = await (await here.tablet(here.time.clock)).journalOf(here.journal.flight);
    expect(again.entries().map(({ line }) => line)).toEqual(lines);
    expect(lines.map((line) => parseEntry(line).ok)).toEqual([true, true, true]);
  });

  it('refuses entries of another flight and changes nothing', async () => {
    const { here, there } = await twoTablets();
    const stranger = await there.shelf.openFlight(opening(there.now()));
    const mixed = [...here.journal.entries(), ...stranger.entries()];
    await expect(here.journal.merge(mixed)).rejects.toThrow(RangeError);
    await expect(here.shelf.takeIn(mixed)).rejects.toThrow(RangeError);
    await expect(here.shelf.takeIn([])).rejects.toThrow(RangeError);
    expect(here.journal.entries()).toHaveLength(1);
    expect(await here.shelf.flights()).toHaveLength(1);
  });
}
