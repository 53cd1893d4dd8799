import styles from './FilePick.module.css';

/** Where files are chosen on the ground: one, several, or a folder where the browser can open one. */
export function FilePick(props: {
  readonly act: string;
  readonly label: string;
  /** Of which kinds; absent takes any. */
  readonly accept?: string;
  readonly choose?: 'one' | 'several' | 'folder';
  readonly onFiles: (files: readonly File[]) => void;
}) {
  const { choose = 'one' } = props;
  return (
    <label className={styles.file}>
      <span>{props.label}</span>
      <input
        type="file"
        data-act={props.act}
        accept={props.accept}
        multiple={choose === 'several'}
        ref={(input) => {
          if (choose === 'folder') input?.setAttribute('webkitdirectory', '');
        }}
        onChange={({ target }) => {
          const files = [...(target.files ?? [])];
          // Or choosing the same file again, after it was put right, would change nothing.
          target.value = '';
          if (files.length > 0) props.onFiles(files);
        }}
      />
    </label>
  );
}
