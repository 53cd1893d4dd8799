import type { Shelf } from '../../../journal/journal.ts';
import type { Desk } from '../context.ts';
import page from '../Debrief.module.css';
import { HandOver } from './HandOver.tsx';
import { OpenFile } from './OpenFile.tsx';
import { SaveFile } from './SaveFile.tsx';

/** The flight timeline file out of this tablet, and another one in. */
export function FilesTab(props: {
  readonly desk: Desk;
  readonly shelf: Shelf;
  readonly build: string;
}) {
  return (
    <div className={page.twoColumns}>
      <OpenFile desk={props.desk} shelf={props.shelf} />
      <div className={page.side}>
        <SaveFile desk={props.desk} build={props.build} />
        <HandOver desk={props.desk} build={props.build} />
      </div>
    </div>
  );
}
