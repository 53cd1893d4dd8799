import {
  createContext,
  use,
  useEffect,
  useLayoutEffect,
  useRef,
  useState,
  type CSSProperties,
  type ReactNode,
} from 'react';
import type { Clock } from '../../journal/journal.ts';
import { TouchBoard, type Touch } from './touchBoard.ts';
import type { TargetForm } from './touchRules.ts';
import styles from './Touch.module.css';

const BoardContext = createContext<TouchBoard | null>(null);

/** The surface of a touch screen: every key inside it obeys the touch rules. */
export function TouchSurface(props: {
  readonly clock: Clock;
  readonly pxPerMm: number;
  readonly onIgnored: (act: string) => void;
  readonly className?: string | undefined;
  readonly children: ReactNode;
}) {
  const root = useRef<HTMLDivElement>(null);
  const latest = useRef(props);
  const [board, setBoard] = useState<TouchBoard | null>(null);
  useLayoutEffect(() => {
    latest.current = props;
  });
  const { clock } = props;
  useLayoutEffect(() => {
    if (root.current === null) {
      return;
    }
    const made = new TouchBoard(root.current, clock, {
      pxPerMm: () => latest.current.pxPerMm,
      onIgnored: (act) => latest.current.onIgnored(act),
    });
    setBoard(made);
    return made.listen();
  }, [clock]);
  return (
    <div
      ref={root}
      data-surface=""
      className={
        props.className === undefined ? styles.surface : `${styles.surface} ${props.className}`
      }
    >
      {board === null ? null : <BoardContext value={board}>{props.children}</BoardContext>}
    </div>
  );
}

export interface TouchKeyProps {
  /** Stable name: `tile-cloud`, `key-5`. One element a screen. */
  readonly act: string;
  readonly form?: TargetForm;
  readonly onTouch: (touch: Touch) => void;
  readonly className?: string | undefined;
  readonly pressed?: boolean | undefined;
  readonly label?: string | undefined;
  readonly disabled?: boolean | undefined;
  /** Where it stands, where its place is worked out. */
  readonly style?: CSSProperties | undefined;
  readonly children: ReactNode;
}

/** A key under the touch rules: stamped at contact, done at release. Outside a surface it is a plain button. */
export function TouchKey(props: TouchKeyProps) {
  const ref = useRef<HTMLButtonElement>(null);
  const latest = useRef(props);
  const board = use(BoardContext);
  useLayoutEffect(() => {
    latest.current = props;
  });
  useEffect(() => {
    const element = ref.current;
    if (board === null || element === null) {
      return;
    }
    return board.place(element, () => ({
      form: latest.current.form ?? 'key',
      onTouch: (touch) => latest.current.onTouch(touch),
    }));
  }, [board]);
  return (
    <button
      ref={ref}
      type="button"
      data-act={props.act}
      data-form={props.form ?? 'key'}
      className={props.className === undefined ? styles.key : `${styles.key} ${props.className}`}
      aria-pressed={props.pressed}
      aria-label={props.label}
      disabled={props.disabled}
      style={props.style}
    >
      {props.children}
    </button>
  );
}

/** A key for what cannot be taken lightly: held for 0.8 s, its bar shows how long still. */
export function HoldKey(props: Omit<TouchKeyProps, 'form'>) {
  return (
    <TouchKey
      {...props}
      form="hold"
      className={props.className === undefined ? styles.hold : `${styles.hold} ${props.className}`}
    >
      {props.children}
      <span className={styles.bar} aria-hidden="true" />
    </TouchKey>
  );
}
