import * as v from 'valibot';
import { scriptSchema, type Script } from './script.ts';
import flightA from './scripts/flight-a.json' with { type: 'json' };

/** The invented five-leg flight over midnight: baseline, five suction settings, three moisture encounters. */
export const scriptA: Script = v.parse(scriptSchema, flightA);
