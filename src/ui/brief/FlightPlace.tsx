import type { Clock, Journal, Shelf } from '../../journal/journal.ts';
import type { FlightView } from '../../record/flight.ts';
import type { FlightSheet } from '../../record/sheet.ts';
import { GroundButton } from '../kit/Ground.tsx';
import type { SettingsStore } from '../kit/settings.ts';
import { BriefForm } from './forms/BriefForm.tsx';
import { CalibrationForm } from './forms/CalibrationForm.tsx';
import { CautionsPage } from './device/CautionsPage.tsx';
import type { DeviceTools } from './device/deviceLines.ts';
import { FlightOverview } from './FlightOverview.tsx';
import type { Place } from './place.ts';
import { PreflightForm } from './forms/PreflightForm.tsx';
import { ScreenPage } from './device/ScreenPage.tsx';
import { SheetPlace } from './sheet/SheetPlace.tsx';
import { TimeHackPage } from './hack/TimeHackPage.tsx';
import { useKeptTexts } from './useKept.ts';
import styles from './Brief.module.css';

const FORMS = [
  { form: 'brief', name: 'Brief held' },
  { form: 'calibration', name: 'Calibration check' },
  { form: 'preflight', name: 'Preflight' },
] as const;

/** The pages of an open flight. */
export function FlightPlace(props: {
  readonly shelf: Shelf;
  readonly journal: Journal;
  readonly clock: Clock;
  readonly view: FlightView;
  readonly sheet: FlightSheet;
  readonly settings: SettingsStore;
  readonly device: string;
  readonly calibrated: boolean;
  readonly pxPerMm: number;
  readonly tools: DeviceTools;
  readonly place: Exclude<Place, { at: 'days' | 'join' }>;
  readonly onPlace: (place: Place) => void;
  readonly onOpened: (journal: Journal) => void;
}) {
  const { place, journal, view, sheet, onPlace } = props;
  const ticks = useKeptTexts(`ticks-${journal.flight}`);
  switch (place.at) {
    case 'flight':
      return <FlightOverview {...props} ticks={ticks} />;
    case 'hack':
      return <TimeHackPage {...props} state={view.state} />;
    case 'cautions':
      return <CautionsPage ticks={ticks} />;
    case 'size':
      return <ScreenPage {...props} />;
    case 'sheet':
    case 'open':
    case 'pad':
      return (
        <SheetPlace
          {...props}
          place={place}
          flight={place.sheet === sheet.id ? { journal, sheet } : null}
        />
      );
    case 'forms':
      return (
        <>
          <div className={styles.keys}>
            {FORMS.map(({ form, name }) => (
              <GroundButton
                key={form}
                act={`forms.tab=${form}`}
                pressed={form === place.form}
                onPress={() => onPlace({ at: 'forms', form })}
              >
                {name}
              </GroundButton>
            ))}
          </div>
          {place.form === 'brief' ? <BriefForm {...props} /> : null}
          {place.form === 'calibration' ? <CalibrationForm {...props} /> : null}
          {place.form === 'preflight' ? <PreflightForm {...props} /> : null}
        </>
      );
  }
}
