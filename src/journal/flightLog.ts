import type { FlightId } from '../record/brand.ts';
import type { Author, Draft, Entry } from '../record/entry.ts';
import type { FlightRow, Head } from './database.ts';
import { divergence, loadFlight, storeForeign, type StoredFlight } from './flightStore.ts';
import type { JournalContext } from './context.ts';
import { twice } from './context.ts';
import type { MergeOutcome } from './journal.ts';
import { ownChain } from './ownChain.ts';
import { extendLog, findStored } from './ownLog.ts';
import { changesSummary, summarise } from './summary.ts';
import type { Chain, Diverged } from './writer.ts';

/** One flight in memory and on disk: what is there, and the chain that the writer extends. */
export interface FlightLog {
  readonly chain: Chain;
  readonly entries: () => readonly Entry[];
  readonly size: () => number;
  readonly head: () => Head | null;
  readonly diverged: () => Diverged | null;
  /** Flown on this tablet and neither closed nor aborted. */
  readonly isOpenHere: () => boolean;
  /** Who held the pen last. */
  readonly lastAuthor: () => Author;
  /** The flight is flown here from now on; on disk with the next entry that begins a recorder. */
  readonly flyHere: () => void;
  /** Reads the disk anew; what another window wrote appears. */
  readonly reload: () => Promise<void>;
  /** All or nothing; entries that are known count as such. */
  readonly keepForeign: (given: readonly Entry[]) => Promise<MergeOutcome>;
}

/** @param flown whether a flight that the disk does not know yet is opened here to be flown */
export async function openLog(
  context: JournalContext,
  flight: FlightId,
  flown: boolean,
): Promise<FlightLog> {
  const { clock, device, ports, database, canary } = context;
  const own = ownChain(flight, clock.now);
  const load = () => twice(context, () => loadFlight(database, canary, flight));
  let { row: storedRow, entries, diverged, remembered, head } = await load();
  let row: FlightRow = storedRow ?? {
    ...summarise(flight, []),
    recorder: null,
    flownHere: flown || canary.marks().some((mark) => mark.flight === flight && mark.open),
    keptAt: clock.now(),
  };
  /** Since the summary was last written, the flight began to be flown here. */
  let joined = false;
  /** The summary that stands once the entries under way are saved. */
  let proposed: FlightRow | null = null;
  start(head);

  function start(from: Head | null) {
    own.restart(from);
    own.saw(entries.sorted());
  }

  function adopt(loaded: StoredFlight) {
    ({ entries, diverged, remembered } = loaded);
    row = loaded.row ?? row;
    start(loaded.head);
  }

  const isOpenHere = () => row.flownHere && row.state === 'open';

  function openingDrafts({ kind, stamp }: Draft): readonly Draft[] {
    if (kind === 'flightOpened' || kind === 'recorderJoined') {
      return [];
    }
    const purpose = isOpenHere() ? 'inFlight' : 'debrief';
    const joined: Draft = { kind: 'recorderJoined', body: { device, purpose }, stamp };
    return diverged === null
      ? [joined]
      : [
          joined,
          {
            kind: 'deviceNoted',
            body: { what: 'storageTrouble', words: divergedWords(diverged) },
            stamp,
          },
        ];
  }

  const summaryWith = (more: readonly Entry[]) =>
    summarise(flight, more.length === 0 ? entries.sorted() : [...entries.sorted(), ...more]);

  /** The disk lost what memory still holds: back to the disk with it, beside the chain that goes on. */
  async function rescue() {
    try {
      await twice(context, () => storeForeign(database, flight, entries.sorted(), () => row));
    } catch {
      // The trouble stays on the screen, and every copy still carries the entries.
    }
  }

  const chain: Chain = {
    opening: (first) => {
      if (own.recorder() !== null) {
        return [];
      }
      own.nameRecorder(ports.randomId());
      return openingDrafts(first);
    },
    seal: own.seal,
    extend: (batch) => {
      const changes =
        joined || own.saved() === null || batch.some((it) => changesSummary(it, entries));
      const nextRow = () => {
        proposed = { ...row, ...summaryWith(batch), recorder: own.recorder() };
        return proposed;
      };
      return extendLog(database, batch, own.saved(), changes ? nextRow : null);
    },
    findStored: (unsaved) => {
      const rec = own.recorder();
      return rec === null
        ? Promise.resolve({ stored: 0, diverged: null })
        : findStored(database, rec, own.saved(), unsaved);
    },
    accept: (batch) => {
      entries.add(batch);
      own.accept(batch);
      joined &&= proposed === null;
      row = proposed ?? row;
      proposed = null;
      const saved = own.saved();
      if (saved !== null) {
        const { rec, seq, id } = saved;
        canary.remember({ flight, rec, seq, headHash: id, open: isOpenHere() });
      }
    },
    beginAnew: (why) => {
      diverged = why;
      proposed = null;
      own.restart(null);
      if (why.kind === 'missing') {
        void rescue();
      }
    },
    discard: database.discard,
  };

  return {
    chain,
    entries: () => entries.sorted(),
    size: () => entries.size(),
    head: own.saved,
    diverged: () => diverged,
    isOpenHere,
    flyHere: () => {
      joined ||= !row.flownHere;
      row = { ...row, flownHere: true };
    },
    lastAuthor: () => {
      const all = entries.sorted();
      const last = all.findLast(({ rec }) => rec === own.recorder()) ?? all.at(-1);
      return { author: last?.author ?? '', role: last?.role ?? '' };
    },
    reload: async () => adopt(await load()),
    keepForeign: async (given) => {
      const unknown = given.filter(({ id }) => entries.byId(id) === undefined);
      const nextRow = () => ({ ...row, ...summaryWith(unknown) });
      await twice(context, () => storeForeign(database, flight, unknown, nextRow));
      row = nextRow();
      const added = entries.add(unknown).length;
      own.saw(unknown);
      if (diverged?.kind === 'missing' && divergence(entries, remembered) === null) {
        diverged = null;
      }
      return { added, known: given.length - added };
    },
  };
}

function divergedWords(diverged: Diverged): string {
  return diverged.kind === 'missing'
    ? `log missing: expected ${diverged.expectedSeq} entries, found ${diverged.foundSeq}`
    : `recorder used twice at entry ${diverged.seq}`;
}
