import { useCallback, useEffect, useMemo, useRef, useState } from 'react';
import type { NoOffset, RecorderOffset } from '../../../analysis/recorder/clockOffset.ts';
import { scribeSide } from '../../../analysis/recorder/scribeSide.ts';
import type { NoHead, RecorderHead } from '../../../file/recorder/recorderHead.ts';
import type { FlightView } from '../../../record/flight.ts';
import type { RecorderMapping } from './mapping.ts';
import type { RecorderPort } from './recorderPort.ts';
import type { RecorderFile } from './recorderTask.ts';

export type RecorderState =
  | { readonly kind: 'none' }
  | { readonly kind: 'looking'; readonly name: string }
  | { readonly kind: 'refused'; readonly name: string; readonly because: NoHead | 'unreadable' }
  | { readonly kind: 'mapping'; readonly file: File; readonly head: RecorderHead }
  | {
      readonly kind: 'reading';
      readonly file: File;
      readonly head: RecorderHead;
      readonly bytes: number;
      readonly rows: number;
    }
  | OpenedRecorder;

export interface OpenedRecorder {
  readonly kind: 'opened';
  readonly file: File;
  readonly head: RecorderHead;
  readonly mapping: RecorderMapping;
  readonly read: RecorderFile;
  readonly port: RecorderPort;
  readonly offset: RecorderOffset | NoOffset | null;
}

export interface Recorder {
  readonly state: RecorderState;
  readonly open: (file: File) => void;
  readonly read: (mapping: RecorderMapping, startMs: number) => void;
  /** Ends what is under way; the file can be read again. */
  readonly cancel: () => void;
}

/** One recorder file at a time, kept open while the views of Debrief change, matched anew when the record changes. */
export function useRecorder(view: FlightView, openPort: () => RecorderPort): Recorder {
  const [state, setState] = useState<RecorderState>({ kind: 'none' });
  const port = useRef<RecorderPort | null>(null);
  const fresh = useCallback((): RecorderPort => {
    port.current?.close();
    port.current = openPort();
    return port.current;
  }, [openPort]);
  useEffect(() => () => port.current?.close(), []);

  const open = useCallback(
    (file: File): void => {
      const mine = fresh();
      setState({ kind: 'looking', name: file.name });
      mine.look(file).then(
        (head) => {
          if (port.current !== mine) return;
          setState(
            typeof head === 'string'
              ? { kind: 'refused', name: file.name, because: head }
              : { kind: 'mapping', file, head },
          );
        },
        () => setState({ kind: 'refused', name: file.name, because: 'unreadable' }),
      );
    },
    [fresh],
  );

  const read = (mapping: RecorderMapping, startMs: number): void => {
    if (!('head' in state)) return;
    const { file, head } = state;
    const mine = fresh();
    setState({ kind: 'reading', file, head, bytes: 0, rows: 0 });
    mine
      .read({ file, head, mapping, startMs }, (bytes, rows) => {
        if (port.current === mine) setState({ kind: 'reading', file, head, bytes, rows });
      })
      .then(
        (done) => {
          if (port.current !== mine) return;
          setState({ kind: 'opened', file, head, mapping, read: done, port: mine, offset: null });
        },
        () => setState({ kind: 'refused', name: file.name, because: 'unreadable' }),
      );
  };

  const cancel = (): void => {
    fresh();
    setState(
      'head' in state ? { kind: 'mapping', file: state.file, head: state.head } : { kind: 'none' },
    );
  };

  const scribe = useMemo(() => scribeSide(view), [view]);
  const openedPort = state.kind === 'opened' ? state.port : null;
  useEffect(() => {
    let isWanted = true;
    void openedPort?.match(scribe).then((offset) => {
      if (!isWanted) return;
      setState((now) =>
        now.kind === 'opened' && now.port === openedPort ? { ...now, offset } : now,
      );
    });
    return () => {
      isWanted = false;
    };
  }, [openedPort, scribe]);

  return { state, open, read, cancel };
}
