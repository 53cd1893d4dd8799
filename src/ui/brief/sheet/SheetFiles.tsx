import { useDeferredValue, useMemo } from 'react';
import { sheetFileName, writeSheetFile } from '../../../file/sheetFile.ts';
import type { FlightSheet } from '../../../record/sheet.ts';
import { GroundButton } from '../../kit/Ground.tsx';
import { SaveLink } from '../../kit/SaveLink.tsx';
import styles from '../Brief.module.css';

/** The sheet as one file, by download or through the share sheet of the tablet; and as a pad of paper. */
export function SheetFiles(props: { readonly sheet: FlightSheet; readonly onPad: () => void }) {
  // A large sheet is not written out between a key and its letter: the file follows when typing rests.
  const sheet = useDeferredValue(props.sheet);
  const { name, text, share } = useMemo(() => fileOf(sheet), [sheet]);
  return (
    <div className={styles.keys}>
      <SaveLink act="sheet.save" name={name} text={text} words="Save as a file" />
      {share === null ? null : (
        <GroundButton act="sheet.share" onPress={share}>
          Share
        </GroundButton>
      )}
      <GroundButton act="sheet.pad" onPress={props.onPad}>
        Paper pad
      </GroundButton>
    </div>
  );
}

function fileOf(sheet: FlightSheet) {
  const name = sheetFileName(sheet);
  const text = writeSheetFile(sheet);
  return { name, text, share: shareOf(name, text) };
}

/** Null where the tablet cannot share files. A share that is called off is no fault. */
function shareOf(name: string, text: string): (() => void) | null {
  if (typeof navigator.canShare !== 'function') return null;
  const data = { files: [new File([text], name, { type: 'application/json' })] };
  return navigator.canShare(data) ? () => void navigator.share(data).catch(() => undefined) : null;
}
