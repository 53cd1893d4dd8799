import { useState } from 'react';
import type { Draft, Stamp } from '../../../record/entry.ts';
import type { FlightView } from '../../../record/flight.ts';
import type { Interval, Run, StandingEntry } from '../../../record/flightState.ts';
import { items } from '../../../record/trail.ts';
import { GroundButton, NumberField, readNumber, TextField } from '../../kit/Ground.tsx';
import { typedTimeOf, type Desk } from '../context.ts';
import { instantOf } from '../fields/typed.ts';
import styles from './EntryDetail.module.css';

type Fact = Pick<
  Extract<Draft, { kind: 'moistureExited' }>['body'],
  'at' | 'doubtS' | 'basis' | 'basisWords'
>;
type Closing = (stamp: Stamp, fact: Fact) => Draft;

/** What closes the interval that this entry opened and nobody closed; null when there is none. */
export function closingKindOf(view: FlightView, standing: StandingEntry): Closing | null {
  const { id } = standing.entry;
  for (const interval of items(view.state.intervals)) {
    if (interval.opened.by === id && interval.closed === null) {
      return closingOf(interval, standing, view);
    }
  }
  for (const run of items(view.state.runs)) {
    if (run.started.by === id && run.ended === null) {
      return pointEnd(run);
    }
  }
  return null;
}

function closingOf(interval: Interval, standing: StandingEntry, view: FlightView): Closing | null {
  const { effective } = standing;
  switch (effective.kind) {
    case 'moistureEntered': {
      const { encounter } = effective.body;
      const named = encounter === undefined ? {} : { encounter };
      return (stamp, fact) => ({ kind: 'moistureExited', stamp, body: { ...named, ...fact } });
    }
    case 'samplerOpened': {
      const { sample } = effective.body;
      const named = sample === undefined ? {} : { sample };
      return (stamp, fact) => ({ kind: 'samplerClosed', stamp, body: { ...named, ...fact } });
    }
    case 'turnStarted':
      return (stamp, fact) => ({ kind: 'turnEnded', stamp, body: fact });
    case 'turbulenceEntered':
      return (stamp, fact) => ({ kind: 'turbulenceExited', stamp, body: fact });
    case 'suctionTurnedOn':
      return (stamp, fact) => ({
        kind: 'suctionTurnedOff',
        stamp,
        body: { wing: effective.body.wing, ...fact },
      });
    case 'testPointStarted':
      return (
        [...items(view.state.runs)]
          .filter(({ started }) => started.by === interval.opened.by)
          .map(pointEnd)[0] ?? null
      );
    case 'ownEventMarked': {
      const { tile, label } = effective.body;
      return (stamp, fact) => ({
        kind: 'ownEventMarked',
        stamp,
        body: { tile, label, form: 'closed', ...fact },
      });
    }
    case 'recorderSwitched':
      return (stamp, fact) => ({ kind: 'recorderSwitched', stamp, body: { on: false, ...fact } });
    case 'photoPanelSwitched':
      return (stamp, fact) => ({ kind: 'photoPanelSwitched', stamp, body: { on: false, ...fact } });
    default:
      return null;
  }
}

function pointEnd({ point, run }: Run): Closing {
  return (stamp, fact) => ({ kind: 'testPointEnded', stamp, body: { point, run, ...fact } });
}

/** Closes an interval after the fact: with its time, the doubt of it and what it is known from. */
export function CloseLateForm(props: {
  readonly desk: Desk;
  readonly standing: StandingEntry;
  readonly onDone: () => void;
}) {
  const { desk, standing } = props;
  const near = desk.base.shown(standing.at, standing.entry.rec);
  const [clock, setClock] = useState('');
  const [doubt, setDoubt] = useState(String(desk.view.state.sheet?.timeDoubts.lateS ?? ''));
  const [evidence, setEvidence] = useState('');
  const [fault, setFault] = useState<string | null>(null);
  const closing = closingKindOf(desk.view, standing);

  const save = (): void => {
    const at = instantOf(clock, near);
    const doubtS = readNumber(doubt);
    if (at === null || at < near) {
      setFault(at === null ? 'A time is HH:MM:SS, in UTC.' : 'It must close after it opened.');
    } else if (doubtS.kind !== 'number' || closing === null) {
      setFault('Give the doubt in seconds.');
    } else {
      const raw = typedTimeOf(desk, near).raw(at);
      const words = evidence.trim() === '' ? {} : { basisWords: evidence.trim() };
      void desk.writer
        .write(
          (stamp) => closing(stamp, { at: raw, doubtS: doubtS.value, basis: 'late', ...words }),
          'Closed late.',
        )
        .then((entry) => {
          if (entry !== null) {
            props.onDone();
          }
        });
    }
  };
  return (
    <section className={styles.form} aria-label="Close late">
      <h3 className={styles.sub}>Close late</h3>
      <div className={styles.fields}>
        <TextField
          act="time"
          label="Closed at, Z"
          hint="HH:MM:SS"
          value={clock}
          fault={fault}
          onChange={setClock}
        />
        <NumberField act="doubt" label="Doubt" unit="s" value={doubt} onChange={setDoubt} />
        <TextField act="basis-words" label="Known from" value={evidence} onChange={setEvidence} />
      </div>
      <div className={styles.actions}>
        <GroundButton act="save" strong disabled={desk.writer.isSaving} onPress={save}>
          Write closing
        </GroundButton>
        <GroundButton act="form-cancel" onPress={props.onDone}>
          Cancel
        </GroundButton>
      </div>
    </section>
  );
}
