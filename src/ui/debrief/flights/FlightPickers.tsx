import { FilePick } from '../../kit/FilePick.tsx';
import styles from './Flights.module.css';

/** Files of other flights: several at once, or a folder where the browser can open one. */
export function FlightPickers({ onFiles }: { readonly onFiles: (files: readonly File[]) => void }) {
  const hasFolders = 'webkitdirectory' in HTMLInputElement.prototype;
  return (
    <div className={styles.pickers}>
      <FilePick
        act="flight-files"
        label="Choose files"
        accept=".jsonl,.txt,.json,application/x-ndjson"
        choose="several"
        onFiles={onFiles}
      />
      {hasFolders ? (
        <FilePick act="flight-folder" label="Choose a folder" choose="folder" onFiles={onFiles} />
      ) : null}
    </div>
  );
}
