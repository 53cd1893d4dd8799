import { useState } from 'react';
import { GroundButton, TextField } from '../../kit/Ground.tsx';
import type { Desk } from '../context.ts';
import styles from './Forms.module.css';

/** Somebody who is not on the flight sheet takes the pen: ground crew, the laboratory. */
export function PenName({ desk }: { readonly desk: Desk }) {
  const [name, setName] = useState('');
  const [role, setRole] = useState('');
  return (
    <section aria-label="Another pen" className={styles.written}>
      <h2>Somebody else writes</h2>
      <div className={styles.pair}>
        <TextField act="pen-name" label="Name" value={name} onChange={setName} />
        <TextField act="pen-role" label="Role" value={role} onChange={setRole} />
      </div>
      <p className={styles.keys}>
        <GroundButton
          act="pen-take"
          disabled={name.trim() === ''}
          onPress={() => desk.writer.takePen({ author: name.trim(), role: role.trim() })}
        >
          Take the pen
        </GroundButton>
      </p>
    </section>
  );
}
