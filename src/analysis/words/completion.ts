import { numberWords } from '../../record/readingWords.ts';
import type { Miss } from '../completion.ts';
import type { CardProgress } from '../results.ts';
import { leftOutWords } from './gates.ts';

const STATES: Readonly<Record<CardProgress['state'], string>> = {
  notFlown: 'not flown',
  open: 'open',
  partial: 'partial',
  complete: 'complete',
  interrupted: 'interrupted',
  terminated: 'terminated',
};

export function cardStateWords(state: CardProgress['state']): string {
  return STATES[state];
}

/** Why a card is not complete, of one run. */
export function missWords(miss: Miss): string {
  switch (miss.because) {
    case 'notFlown':
      return 'never started';
    case 'open':
    case 'interrupted':
    case 'terminated': {
      const head = `run ${miss.run} ${STATES[miss.because]}`;
      return miss.reason === null ? head : `${head}: ${miss.reason}`;
    }
    case 'tooFewReadings': {
      const head = `run ${miss.run}: ${miss.usable} of ${miss.wanted} readings usable`;
      const out = miss.leftOut.map(({ reason, times }) =>
        times === 1 ? leftOutWords(reason) : `${leftOutWords(reason)} ${times} times`,
      );
      return out.length === 0 ? head : `${head}; left out: ${out.join(', ')}`;
    }
    case 'tooShort':
      return `run ${miss.run}: held ${minutes(miss.heldS)} of ${minutes(miss.wantedS)} min`;
  }
}

function minutes(seconds: number): string {
  return numberWords(seconds / 60, 1);
}
