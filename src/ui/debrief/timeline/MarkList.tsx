import { useEffect, useMemo, useRef, type KeyboardEvent } from 'react';
import type { EntryId } from '../../../record/brand.ts';
import type { FlightView } from '../../../record/flight.ts';
import type { AxisTime } from '../axisTime.ts';
import styles from './Timeline.module.css';
import { placeOf } from './hitTest.ts';
import type { ChartLayout } from './laneLayout.ts';
import { stepFrom, type Step } from './markSteps.ts';
import type { Mark, TimelineModel } from './model.ts';
import { readerText, spansByEntry } from './readerText.ts';
import type { TimeScale } from './timeScale.ts';

/** All marks stand in the page up to this many; beyond it, the ones about the chosen mark. */
const WHOLE_UP_TO = 400;
const ABOUT_CHOSEN = 40;

/**
 * The same marks as a list that a reader and the keyboard can walk: the canvas says nothing to either.
 * Left and right go along time, up and down change the lane, Enter opens the entry, Escape leaves.
 */
export function MarkList(props: {
  readonly view: FlightView;
  readonly axis: AxisTime;
  readonly model: TimelineModel;
  readonly layout: ChartLayout;
  readonly scale: TimeScale;
  readonly selected: EntryId | null;
  readonly onSelect: (entry: EntryId) => void;
  readonly onZoom: (factor: number) => void;
  readonly onOpen: () => void;
  readonly onLeave: () => void;
  readonly onFocused: (isFocused: boolean) => void;
}) {
  const { model, selected } = props;
  const list = useRef<HTMLUListElement>(null);
  const spans = useMemo(() => spansByEntry(model), [model]);
  const chosen = Math.max(
    0,
    model.marks.findIndex(({ entry }) => entry === selected),
  );
  const isWhole = model.marks.length <= WHOLE_UP_TO;
  const first = isWhole ? 0 : Math.max(0, chosen - ABOUT_CHOSEN);
  const listed = isWhole ? model.marks : model.marks.slice(first, chosen + ABOUT_CHOSEN);

  useEffect(() => {
    if (list.current?.contains(document.activeElement) === true) {
      list.current.querySelector<HTMLElement>('[tabindex="0"]')?.focus();
    }
  }, [chosen]);

  const onKeyDown = (event: KeyboardEvent): void => {
    const step = stepOfKey(event);
    if (step !== null) {
      const next = stepFrom(model, model.marks[chosen]?.entry ?? null, step);
      if (next !== undefined) {
        props.onSelect(next.entry);
      }
    } else if (event.key === '+' || event.key === '=') {
      props.onZoom(0.5);
    } else if (event.key === '-' || event.key === '−') {
      props.onZoom(2);
    } else if (event.key === 'Enter') {
      props.onOpen();
    } else if (event.key === 'Escape') {
      props.onLeave();
    } else {
      return;
    }
    event.preventDefault();
  };

  return (
    <ul
      ref={list}
      role="listbox"
      aria-label="Entries in order of time"
      className={styles.offScreen}
      onKeyDown={onKeyDown}
      onFocus={() => props.onFocused(true)}
      onBlur={() => props.onFocused(false)}
    >
      {listed.map((mark, index) => (
        <Item
          key={mark.entry}
          mark={mark}
          position={first + index}
          isChosen={first + index === chosen}
          isSelected={mark.entry === selected}
          spans={spans}
          {...props}
        />
      ))}
    </ul>
  );
}

function Item(props: {
  readonly mark: Mark;
  readonly position: number;
  readonly isChosen: boolean;
  readonly isSelected: boolean;
  readonly view: FlightView;
  readonly axis: AxisTime;
  readonly model: TimelineModel;
  readonly layout: ChartLayout;
  readonly scale: TimeScale;
  readonly spans: ReturnType<typeof spansByEntry>;
  readonly onSelect: (entry: EntryId) => void;
}) {
  const { mark, view, model, scale, layout } = props;
  const standing = view.byId(mark.entry);
  const place = placeOf(mark, { model, layout, scale });
  const isShown = mark.at >= scale.window.from && mark.at <= scale.window.to;
  return (
    <li
      role="option"
      data-act="mark"
      data-entry={mark.entry}
      data-seq={mark.seq}
      data-kind={mark.kind}
      data-lane={mark.lane}
      data-x={place === null ? '' : Math.round(place.xPx)}
      data-y={place === null ? '' : Math.round(place.yPx)}
      data-shown={isShown ? 'yes' : 'no'}
      tabIndex={props.isChosen ? 0 : -1}
      aria-selected={props.isSelected}
      aria-posinset={props.position + 1}
      aria-setsize={model.marks.length}
      onClick={() => props.onSelect(mark.entry)}
    >
      {standing === undefined
        ? ''
        : readerText(mark, standing, view, props.spans.get(mark.entry) ?? [], props.axis)}
    </li>
  );
}

function stepOfKey({ key, shiftKey }: KeyboardEvent): Step | null {
  switch (key) {
    case 'ArrowLeft':
      return shiftKey ? 'earlierInLane' : 'earlier';
    case 'ArrowRight':
      return shiftKey ? 'laterInLane' : 'later';
    case 'ArrowUp':
      return 'laneUp';
    case 'ArrowDown':
      return 'laneDown';
    case 'Home':
      return 'first';
    case 'End':
      return 'last';
    default:
      return null;
  }
}
