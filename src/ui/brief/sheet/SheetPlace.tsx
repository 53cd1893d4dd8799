import type { Clock, Journal, Shelf } from '../../../journal/journal.ts';
import type { FlightSheet } from '../../../record/sheet.ts';
import { sheetChanges } from '../../../record/sheetDiff.ts';
import type { SheetSection } from '../../../record/sheetCheck.ts';
import { Caution } from '../../kit/Caution.tsx';
import { GroundButton, TextField } from '../../kit/Ground.tsx';
import { isoDate } from '../../kit/time.ts';
import { useWrite } from '../forms/forms.ts';
import { OpenFlight } from '../days/OpenFlight.tsx';
import type { Place } from '../place.ts';
import { useSheetDraft, useSheetKeeper, type SheetDraft } from './sheetDraft.ts';
import { SheetEditor } from './SheetEditor.tsx';
import type { SheetKeeper } from './sheetKeeper.ts';
import { withoutBasis } from '../../../record/sheetRevision.ts';
import { PadPage } from '../pad/PadPage.tsx';
import { SheetFiles } from './SheetFiles.tsx';
import { ChangeList } from './ChangeList.tsx';
import { useKeptTexts } from '../useKept.ts';
import styles from '../Brief.module.css';

interface SheetPlaceProps {
  readonly shelf: Shelf;
  readonly clock: Clock;
  readonly device: string;
  readonly place: Extract<Place, { at: 'sheet' | 'open' | 'pad' }>;
  /** The open flight that this sheet belongs to: changes go into its record, with a reason. */
  readonly flight: { readonly journal: Journal; readonly sheet: FlightSheet } | null;
  readonly onPlace: (place: Place) => void;
  readonly onOpened: (journal: Journal) => void;
}

/** A flight sheet on the shelf: edited page by page, opened as a flight, or written into an open one. */
export function SheetPlace(props: SheetPlaceProps) {
  const keeper = useSheetKeeper(props.shelf, props.place.sheet);
  if (keeper === null) {
    return <p>Reading.</p>;
  }
  return keeper === 'absent' ? (
    <p>This flight sheet is not on the tablet any more. The day list has the others.</p>
  ) : (
    <FoundSheet key={props.place.sheet} keeper={keeper} {...props} />
  );
}

function FoundSheet({ keeper, ...props }: SheetPlaceProps & { readonly keeper: SheetKeeper }) {
  const { place, onPlace, clock } = props;
  const section: SheetSection = place.at === 'sheet' ? place.section : 'flight';
  const go = (to: SheetSection, item: number | null) =>
    onPlace({ at: 'sheet', sheet: place.sheet, section: to, item });
  const draft = useSheetDraft(keeper, {
    today: isoDate(clock.now()),
    item: place.at === 'sheet' ? place.item : null,
    openItem: (item) => go(section, item),
  });
  if (place.at === 'pad') {
    return <PadPage sheet={draft.sheet} onBack={() => go('flight', null)} />;
  }
  if (place.at === 'open') {
    return (
      <OpenFlight
        shelf={props.shelf}
        clock={clock}
        sheet={draft.sheet}
        doubts={draft.doubts.length}
        device={props.device}
        onBack={() => go('flight', null)}
        onOpened={props.onOpened}
      />
    );
  }
  return (
    <>
      <div className={styles.sheetHead}>
        {props.flight === null ? (
          <GroundButton act="brief.tab=days" onPress={() => onPlace({ at: 'days' })}>
            Day list
          </GroundButton>
        ) : null}
        <p>
          <b>{draft.sheet.title.trim() === '' ? 'No title yet' : draft.sheet.title}</b>{' '}
          <span className={styles.quiet}>
            {draft.saved ? 'kept' : draft.trouble ? '' : 'keeping'}
          </span>
        </p>
        {draft.trouble ? <Caution words="NOT SAVED. It is tried again." /> : null}
        <GroundButton act="sheet.undo" disabled={!draft.canUndo} onPress={draft.undo}>
          Take back
        </GroundButton>
        <SheetFiles sheet={draft.sheet} onPad={() => onPlace({ at: 'pad', sheet: place.sheet })} />
        {props.flight === null ? (
          <GroundButton
            act="sheet.toOpen"
            strong
            onPress={() => onPlace({ at: 'open', sheet: place.sheet })}
          >
            Open the flight
          </GroundButton>
        ) : null}
      </div>
      {props.flight === null ? null : <SheetChange {...props.flight} clock={clock} draft={draft} />}
      <SheetEditor draft={draft} section={section} onPlace={go} />
    </>
  );
}

/** What differs from the sheet that stands in the record, and the reason that has to go with it. */
function SheetChange(props: {
  readonly journal: Journal;
  readonly sheet: FlightSheet;
  readonly clock: Clock;
  readonly draft: SheetDraft;
}) {
  const texts = useKeptTexts(`change-${props.journal.flight}`);
  const { write, refused } = useWrite(props.journal);
  const changes = sheetChanges(props.sheet, props.draft.sheet);
  if (changes.length === 0) {
    return <p className={styles.quiet}>As it stands in the record of the open flight.</p>;
  }
  const reason = texts.of('reason');
  return (
    <section className={styles.change} aria-label="Change in the open flight">
      <div>
        <b>Not in the record yet:</b>
        <ChangeList changes={changes} />
      </div>
      <TextField
        act="change.reason"
        label="Reason"
        value={reason}
        onChange={(text) => texts.put('reason', text)}
      />
      <GroundButton
        act="change.write"
        strong
        disabled={reason.trim() === ''}
        onPress={() => {
          write({
            kind: 'flightSheetChanged',
            stamp: props.clock.stampNow(),
            body: { sheet: withoutBasis(props.draft.sheet), reason },
          });
          texts.clear();
        }}
      >
        Write the change
      </GroundButton>
      {refused === null ? null : <b role="alert">{refused}</b>}
    </section>
  );
}
