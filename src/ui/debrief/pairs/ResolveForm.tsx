import { useState } from 'react';
import type { ObservationPair } from '../../../analysis/observationPairs.ts';
import type { StandingEntry } from '../../../record/flightState.ts';
import { TextField } from '../../kit/Ground.tsx';
import { ChipField } from '../../kit/GroundChips.tsx';
import type { Desk } from '../context.ts';
import { FormFoot } from '../forms/FormFoot.tsx';

type Verdict = 'first' | 'second' | 'both';

/** A person says which observation stands, or that the two were different events; both stay in the record. */
export function ResolveForm({
  desk,
  pair,
  onDone,
}: {
  readonly desk: Desk;
  readonly pair: ObservationPair;
  readonly onDone: () => void;
}) {
  const [verdict, setVerdict] = useState<Verdict | null>(null);
  const [reason, setReason] = useState('');
  const [fault, setFault] = useState<string | null>(null);
  const { first, second } = pair;
  const nameOf = ({ at, entry }: StandingEntry): string =>
    `${desk.axis.time.words(desk.base.shown(at, entry.rec))} by ${entry.author} stands`;

  const save = (): void => {
    if (verdict === null || reason.trim() === '') {
      setFault(verdict === null ? 'Choose which one stands.' : 'Say why, in a few words.');
      return;
    }
    const [target, other] = verdict === 'second' ? [first, second] : [second, first];
    void desk.writer
      .write(
        (stamp) => ({
          kind: 'observationsResolved',
          stamp,
          body: {
            target: target.entry.id,
            other: other.entry.id,
            verdict: verdict === 'both' ? 'bothStand' : 'otherStands',
            reason: reason.trim(),
          },
        }),
        verdict === 'both' ? 'Decided: both stand.' : 'Decided. Both stay readable in the audit.',
      )
      .then((entry) => (entry === null ? undefined : onDone()));
  };
  return (
    <>
      <ChipField
        act="verdict"
        label="Which stands"
        value={verdict}
        choices={[
          { value: 'first', label: nameOf(first) },
          { value: 'second', label: nameOf(second) },
          { value: 'both', label: 'Both: two events' },
        ]}
        onChange={setVerdict}
      />
      <TextField
        act="verdict-reason"
        label="Because (needed)"
        hint="what decides it"
        value={reason}
        onChange={setReason}
      />
      <FormFoot
        fault={fault}
        words="Write decision"
        isSaving={desk.writer.isSaving}
        onSave={save}
      />
    </>
  );
}
