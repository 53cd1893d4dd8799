import { useState } from 'react';
import { headsOf } from '../../../file/timelineFile.ts';
import { entryId, type EntryId } from '../../../record/brand.ts';
import { GroundButton, TextField } from '../../kit/Ground.tsx';
import { whyReadOnly, type Desk } from '../context.ts';
import page from '../Debrief.module.css';
import type { OpenItem } from './openItems.ts';
import { CompareCode } from './CompareCode.tsx';
import { Signatures } from './Signatures.tsx';
import styles from './Sign.module.css';

/** What is still open comes first; signing freezes what was seen by its heads and names what was left open. */
export function SignTab(props: {
  readonly desk: Desk;
  readonly openItems: readonly OpenItem[];
  readonly onOpen: (entry: EntryId) => void;
  readonly onPrint: () => void;
}) {
  const { desk, openItems } = props;
  const readOnly = whyReadOnly(desk.journal);
  return (
    <div className={page.twoColumns}>
      <section aria-label="Open items" className={styles.open}>
        <h2>
          {openItems.length === 0 ? 'Nothing is open' : `${openItems.length} open`}{' '}
          <span>answer them, or sign them as open</span>
        </h2>
        <ol>
          {openItems.map((item) => (
            <Item key={`${item.words} ${item.entry ?? ''}`} item={item} onOpen={props.onOpen} />
          ))}
        </ol>
      </section>
      <div className={page.side}>
        <Signatures desk={desk} />
        <GroundButton act="go-print" strong onPress={props.onPrint}>
          Print
        </GroundButton>
        {readOnly === null ? <SignForm desk={desk} openItems={openItems} /> : <p>{readOnly}</p>}
        <CompareCode desk={desk} />
      </div>
    </div>
  );
}

function Item({
  item,
  onOpen,
}: {
  readonly item: OpenItem;
  readonly onOpen: (entry: EntryId) => void;
}) {
  const { entry } = item;
  return (
    <li>
      <span>{item.words}</span>
      {entry === null ? null : (
        <GroundButton act="open-item" onPress={() => onOpen(entry)}>
          Open
        </GroundButton>
      )}
    </li>
  );
}

function SignForm({
  desk,
  openItems,
}: {
  readonly desk: Desk;
  readonly openItems: readonly OpenItem[];
}) {
  const people = desk.view.state.sheet?.people ?? [];
  const roles = [...new Set(people.map(({ role, name }) => name ?? role))];
  const [signers, setSigners] = useState<readonly string[]>([]);
  const [other, setOther] = useState('');
  const [left, setLeft] = useState<readonly string[]>([]);
  const [also, setAlso] = useState('');
  const [fault, setFault] = useState<string | null>(null);
  const toggled = (list: readonly string[], word: string): readonly string[] =>
    list.includes(word) ? list.filter((one) => one !== word) : [...list, word];

  const sign = (): void => {
    const typed = other
      .split(',')
      .map((word) => word.trim())
      .filter((word) => word !== '');
    const signedBy = [...roles.filter((role) => signers.includes(role)), ...typed];
    if (signedBy.length === 0) {
      setFault('Say who signs.');
      return;
    }
    const more = also
      .split('\n')
      .map((word) => word.trim())
      .filter((word) => word !== '');
    const named = openItems.map(({ words }) => words).filter((words) => !left.includes(words));
    const heads = headsOf(desk.journal.entries()).map(({ rec, seq, hash }) => ({
      rec,
      seq,
      hash: entryId(hash),
    }));
    setFault(null);
    void desk.writer.write(
      (stamp) => ({
        kind: 'logSigned',
        stamp,
        body: { signedBy, openItems: [...named, ...more], heads },
      }),
      `Signed by ${signedBy.join(', ')}.`,
    );
  };
  return (
    <section aria-label="Sign" className={styles.form}>
      <fieldset className={styles.toggles}>
        <legend>Signed by</legend>
        {roles.map((role) => (
          <GroundButton
            key={role}
            act={`signer-${role}`}
            pressed={signers.includes(role)}
            onPress={() => setSigners(toggled(signers, role))}
          >
            {role}
          </GroundButton>
        ))}
      </fieldset>
      <TextField act="signer-other" label="And by" value={other} onChange={setOther} />
      {openItems.length === 0 ? null : (
        <fieldset className={styles.toggles}>
          <legend>Named as open in the signature</legend>
          {openItems.map(({ words }, index) => (
            <GroundButton
              key={words}
              act={`open-item-${index + 1}`}
              pressed={!left.includes(words)}
              onPress={() => setLeft(toggled(left, words))}
            >
              {words}
            </GroundButton>
          ))}
        </fieldset>
      )}
      <TextField
        act="open-other"
        label="Also open, one a line"
        long
        value={also}
        onChange={setAlso}
      />
      {fault === null ? null : (
        <p className={styles.fault} role="alert">
          {fault}
        </p>
      )}
      <GroundButton act="sign" strong disabled={desk.writer.isSaving} onPress={sign}>
        Sign the log
      </GroundButton>
    </section>
  );
}
