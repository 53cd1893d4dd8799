import { useEffect, useState, type CSSProperties } from 'react';
import type { Clock, Journal, Shelf } from '../../journal/journal.ts';
import type { FlightId } from '../../record/brand.ts';
import { blankSheet } from '../../record/blankSheet.ts';
import { viewOf } from '../../record/flight.ts';
import type { FlightSheet } from '../../record/sheet.ts';
import { withBasis } from '../../record/sheetRevision.ts';
import { USUAL_TILE_PAGES } from '../../record/tiles.ts';
import { GroundButton } from '../kit/Ground.tsx';
import { screenMm, useWindowPx } from '../kit/mm.ts';
import { useSettings, type SettingsStore } from '../kit/settings.ts';
import { BriefHeader } from './BriefHeader.tsx';
import { DayList } from './days/DayList.tsx';
import type { DeviceTools } from './device/deviceLines.ts';
import { JoinFlight } from './days/JoinFlight.tsx';
import { OpenFlightView } from './OpenFlightView.tsx';
import { placeSchema, type Place } from './place.ts';
import { ScreenPage } from './device/ScreenPage.tsx';
import { SheetPlace } from './sheet/SheetPlace.tsx';
import { useKept } from './useKept.ts';
import styles from './Brief.module.css';

export interface BriefProps {
  readonly shelf: Shelf;
  /** The flight that is open; null before one is. */
  readonly journal: Journal | null;
  readonly clock: Clock;
  readonly settings: SettingsStore;
  readonly tools: DeviceTools;
  readonly onOpened: (journal: Journal) => void;
  readonly onFly: (flight?: FlightId) => void;
  readonly onDebrief: (flight?: FlightId) => void;
}

const DAYS: Place = { at: 'days' };
const FLIGHT: Place = { at: 'flight' };

/** Before flight: the day's flights, the flight sheet, the tablet and the clocks. */
export function Brief(props: BriefProps) {
  const { shelf, clock } = props;
  const journal = props.journal !== null && isOwn(props.journal) ? props.journal : null;
  const settings = useSettings(props.settings);
  const { widthPx, heightPx } = useWindowPx();
  const { pxPerMm } = screenMm(widthPx, heightPx, settings.pxPerMm);
  const [kept, setPlace] = useKept('place', placeSchema, journal === null ? DAYS : FLIGHT);
  useEffect(() => {
    document.documentElement.dataset['theme'] = settings.theme;
  }, [settings.theme]);
  const [trouble, setTrouble] = useState<string | null>(null);
  const needsFlight = !['days', 'sheet', 'open', 'pad', 'join', 'size'].includes(kept.at);
  const place = needsFlight && journal === null ? DAYS : kept;
  const go = (to: Place) => {
    setTrouble(null);
    setPlace(() => to);
  };
  const editNew = async (sheet: FlightSheet) => {
    try {
      await shelf.keepSheet(sheet);
      go({ at: 'sheet', sheet: sheet.id, section: 'flight', item: null });
    } catch {
      setTrouble('Not kept: this tablet refused the write. Try again.');
    }
  };
  const newId = () => `FS-${clock.now().toString(36)}`;
  const opened = (next: Journal) => {
    go(FLIGHT);
    props.onOpened(next);
  };
  const days = (
    <DayList
      shelf={shelf}
      clock={clock}
      pxPerMm={pxPerMm}
      openFlight={journal?.flight ?? null}
      onNew={() =>
        void editNew(
          blankSheet({
            id: newId(),
            massUnit: 'lb',
            heightUnit: 'ft',
            tilePages: USUAL_TILE_PAGES,
          }),
        )
      }
      onCopyOfSheet={(sheet) => void editNew({ ...withBasis(sheet, sheet), id: newId() })}
      onCopyOfFlight={(flight) =>
        void sheetOf(shelf, props.journal, flight).then((sheet) =>
          sheet === null
            ? setTrouble('That flight has no flight sheet that can be read.')
            : editNew({ ...withBasis(sheet, sheet), id: newId() }),
        )
      }
      onSheet={(sheet) => go({ at: 'sheet', sheet: sheet.id, section: 'flight', item: null })}
      onResume={(flight) =>
        flight === journal?.flight
          ? go(FLIGHT)
          : void shelf
              .journalOf(flight)
              .then(opened, () => setTrouble('That flight could not be read.'))
      }
      onJoin={(flight) => go({ at: 'join', flight })}
      onDebrief={props.onDebrief}
      onScreen={() => go({ at: 'size' })}
      newId={newId}
    />
  );
  const joining =
    place.at === 'join' ? (
      <JoinFlight
        shelf={shelf}
        clock={clock}
        flight={place.flight}
        device={settings.device}
        onBack={() => go(DAYS)}
        onJoined={opened}
      />
    ) : null;
  // Set here and not only on the page, so that a card calibration is seen while it is made.
  const scale: CSSProperties & Readonly<Record<'--mm', string>> = { '--mm': `${pxPerMm}px` };
  const shared = { ...props, device: settings.device, onOpened: opened, onPlace: go };
  return (
    <div className={styles.brief} style={scale}>
      {journal === null ? (
        <>
          <BriefHeader {...props} flight={null} />
          <main>
            {place.at === 'sheet' || place.at === 'open' || place.at === 'pad' ? (
              <SheetPlace {...shared} place={place} flight={null} />
            ) : place.at === 'size' ? (
              <>
                <GroundButton act="brief.tab=days" onPress={() => go(DAYS)}>
                  Day list
                </GroundButton>
                <ScreenPage settings={props.settings} pxPerMm={pxPerMm} />
              </>
            ) : (
              (joining ?? days)
            )}
          </main>
        </>
      ) : (
        <OpenFlightView
          {...shared}
          journal={journal}
          place={place}
          calibrated={settings.pxPerMm !== null}
          pxPerMm={pxPerMm}
          days={joining ?? days}
        />
      )}
      {trouble === null ? null : (
        <p role="alert">
          <b>{trouble}</b>
        </p>
      )}
    </div>
  );
}

/** Whether the flight is this tablet's to prepare: not the demo, and not one that came in a file. */
function isOwn(journal: Journal): boolean {
  const [first] = journal.entries();
  const isDemo = first?.kind === 'flightOpened' && first.body.nature === 'demo';
  return !isDemo && journal.recorder() !== null;
}

/** The flight sheet of a flight as it was last written there. */
async function sheetOf(
  shelf: Shelf,
  open: Journal | null,
  flight: FlightId,
): Promise<FlightSheet | null> {
  if (open?.flight === flight) {
    return viewOf(open.entries()).state.sheetAsWritten;
  }
  const journal = await shelf.journalOf(flight);
  const { sheetAsWritten: sheet } = viewOf(journal.entries()).state;
  await journal.close();
  return sheet;
}
