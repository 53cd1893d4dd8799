import styles from './Flights.module.css';

/** Files of other flights: several at once, or a folder where the browser can open one. */
export function FlightPickers({ onFiles }: { readonly onFiles: (files: readonly File[]) => void }) {
  const hasFolders = 'webkitdirectory' in HTMLInputElement.prototype;
  const taken = (input: HTMLInputElement): void => {
    onFiles([...(input.files ?? [])]);
    // Or choosing the same files again would change nothing.
    input.value = '';
  };
  return (
    <div className={styles.pickers}>
      <label className={styles.picker}>
        <span>Choose files</span>
        <input
          type="file"
          multiple
          data-act="flight-files"
          accept=".jsonl,.txt,.json,application/x-ndjson"
          onChange={(event) => taken(event.target)}
        />
      </label>
      {hasFolders ? (
        <label className={styles.picker}>
          <span>Choose a folder</span>
          <input
            type="file"
            data-act="flight-folder"
            ref={(input) => input?.setAttribute('webkitdirectory', '')}
            onChange={(event) => taken(event.target)}
          />
        </label>
      ) : null}
    </div>
  );
}
