import { useCallback, type RefCallback } from 'react';
import styles from './Ground.module.css';

/** A key that saves a text as a file: the bytes lie ready before the touch, as some browsers want. */
export function SaveLink(props: {
  readonly act: string;
  readonly name: string;
  readonly text: string;
  readonly words: string;
}) {
  const { text } = props;
  const link: RefCallback<HTMLAnchorElement> = useCallback(
    (anchor) => {
      if (anchor === null) return;
      const url = URL.createObjectURL(new Blob([text], { type: 'application/json' }));
      anchor.setAttribute('href', url);
      return () => URL.revokeObjectURL(url);
    },
    [text],
  );
  return (
    <a
      data-act={props.act}
      className={`${styles.key} ${styles.link}`}
      href={`#${props.name}`}
      ref={link}
      download={props.name}
    >
      {props.words}
    </a>
  );
}
