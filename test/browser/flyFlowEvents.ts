import * as v from 'valibot';
import { bodySchemas, type KnownKind } from '../../src/record/kinds.ts';
import { chooseChip, putNumber, putWords } from './flyDetails.ts';
import { nameProbes } from './flyPads.ts';
import type { Scribe } from './scribe.ts';

const MACH = { wholeDigits: 1, decimals: 3 };

/** Suction, flow, weather, and what people said. */
export async function enterFlowEvent(
  scribe: Scribe,
  { kind, body }: { readonly kind: KnownKind; readonly body: unknown },
  touch: (act: string) => Promise<void>,
): Promise<void> {
  switch (kind) {
    case 'suctionUnitSwitched': {
      const { on, state } = v.parse(bodySchemas.suctionUnitSwitched, body);
      await touch(on ? 'unit-on' : 'unit-off');
      return putWords(scribe, 'state', state);
    }
    case 'suctionTurnedOn':
    case 'suctionChanged': {
      const { wing, setting } = v.parse(bodySchemas.suctionChanged, body);
      const on = wing === 'both' ? 'suction-on' : SUCTION_ON[wing];
      await touch(kind === 'suctionTurnedOn' ? on : 'suction-change');
      return putWords(scribe, 'setting', setting);
    }
    case 'suctionTurnedOff':
      return touch('suction-off');
    case 'throttleChanged':
      await touch('power');
      return putWords(scribe, 'setting', v.parse(bodySchemas.throttleChanged, body).setting);
    case 'laminarGained':
    case 'laminarLost':
    case 'probesRead': {
      const { wings = {}, panels = [], byCommand } = v.parse(bodySchemas.laminarGained, body);
      await touch(FLOW_ACTS[kind]);
      await nameProbes(scribe, wings, panels);
      return chooseChip(scribe, 'byCommand', byCommand === true ? 'By command' : undefined);
    }
    case 'moistureEntered':
    case 'moistureExited': {
      const { look, encounter } = v.parse(bodySchemas.moistureEntered, body);
      await touch(kind === 'moistureEntered' ? 'cloud-in' : 'cloud-out');
      await putWords(scribe, 'look', look);
      return chooseChip(scribe, 'encounter', encounter);
    }
    case 'samplerOpened':
    case 'samplerClosed': {
      const { purpose, sampler, sample } = v.parse(bodySchemas.samplerOpened, body);
      await touch(kind === 'samplerOpened' ? 'sampler-open' : 'sampler-close');
      await putWords(scribe, 'purpose', purpose);
      await putWords(scribe, 'sampler', sampler);
      return putWords(scribe, 'sample', sample);
    }
    case 'turbulenceEntered': {
      const { strength, machFrom, machTo } = v.parse(bodySchemas.turbulenceEntered, body);
      await touch('rough-in');
      await putWords(scribe, 'strength', strength);
      await putNumber(scribe, 'machFrom', machFrom, MACH);
      return putNumber(scribe, 'machTo', machTo, MACH);
    }
    case 'pilotCommented':
    case 'noted': {
      await touch(kind === 'noted' ? 'note' : 'pilot');
      return putWords(scribe, 'words', v.parse(bodySchemas.noted, body).words);
    }
    case 'jokerReached':
      return touch('joker');
    default:
      throw new Error(`nobody enters ${kind} on Fly`);
  }
}

const SUCTION_ON = { L: 'suction-on-left', R: 'suction-on-right' } as const;
const FLOW_ACTS = { laminarGained: 'gain', laminarLost: 'loss', probesRead: 'probes' } as const;
