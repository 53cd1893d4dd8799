import { useMemo } from 'react';
import { useBytesOf } from './useBytesOf.ts';
import styles from './Files.module.css';

/** Saves a file whose bytes are there before it is touched: some browsers want the touch itself for a download. */
export function FileLink(props: {
  readonly act: string;
  readonly name: string;
  readonly words: string;
  readonly content: string | Uint8Array<ArrayBuffer>;
  readonly mediaType: string;
  readonly isMain?: boolean;
}) {
  const { content, mediaType } = props;
  const bytes = useMemo(
    () => (typeof content === 'string' ? new TextEncoder().encode(content) : content),
    [content],
  );
  const link = useBytesOf(bytes, mediaType);
  return (
    <a
      data-act={props.act}
      className={props.isMain === true ? `${styles.key} ${styles.main}` : styles.key}
      href={`#${props.name}`}
      ref={link}
      download={props.name}
    >
      Save {props.words}
    </a>
  );
}
