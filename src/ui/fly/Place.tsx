import type { CSSProperties, ReactNode } from 'react';
import type { Place as Where } from './places.ts';
import styles from './Place.module.css';

type Millimetres = CSSProperties & Readonly<Record<'--x' | '--y' | '--w' | '--h', number>>;

/** A part of Fly at its place in millimetres. It never moves and never scrolls. */
export function Place(props: {
  readonly at: Where;
  readonly label: string;
  readonly className?: string | undefined;
  readonly children: ReactNode;
}) {
  const { x, y, w, h } = props.at;
  const style: Millimetres = { '--x': x, '--y': y, '--w': w, '--h': h };
  return (
    <section
      className={
        props.className === undefined ? styles.place : `${styles.place} ${props.className}`
      }
      style={style}
      aria-label={props.label}
    >
      {props.children}
    </section>
  );
}
