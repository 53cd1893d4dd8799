import * as v from 'valibot';
import { bodySchemas, type KnownKind } from '../../src/record/kinds.ts';
import type { FlightSheet } from '../../src/record/sheet.ts';
import { clockText } from './briefDriver.ts';
import { chooseChip, putDigits, putMeasure, putNumber, putWords } from './flyDetails.ts';
import { enterFlowEvent } from './flyFlowEvents.ts';
import { nameCovers } from './flyPads.ts';
import type { Scribe } from './scribe.ts';

const COUNT = { wholeDigits: 4, decimals: 0 };

/** The touch of an event, then the fields that only its kind has. */
export async function enterEvent(
  scribe: Scribe,
  sheet: FlightSheet,
  { kind, body }: { readonly kind: KnownKind; readonly body: unknown },
  touch: (act: string) => Promise<void>,
): Promise<void> {
  switch (kind) {
    case 'recorderSwitched': {
      const { on, channels, medium } = v.parse(bodySchemas.recorderSwitched, body);
      await touch(on ? 'rec-on' : 'rec-off');
      await putNumber(scribe, 'channels', channels, COUNT);
      return putWords(scribe, 'text', medium);
    }
    case 'photoPanelSwitched': {
      const { on, frame, everyS, medium } = v.parse(bodySchemas.photoPanelSwitched, body);
      await touch(on ? 'photo-on' : 'photo-off');
      await putNumber(scribe, 'frame', frame, COUNT);
      await putNumber(scribe, 'every', everyS, COUNT);
      return putWords(scribe, 'text', medium);
    }
    case 'engineStarted': {
      const { engine } = v.parse(bodySchemas.engineStarted, body);
      await touch('engine-start');
      return chooseChip(scribe, 'engine', engine?.toString());
    }
    case 'engineShutDown': {
      const { engines = [] } = v.parse(bodySchemas.engineShutDown, body);
      await touch('engine-stop');
      const all = engines.length === sheet.aircraft.engineCount;
      return chooseChip(scribe, 'engines', all ? 'All' : engines[0]?.toString());
    }
    case 'blocksOff': {
      await touch('blocks-off');
      return putMeasure(scribe, 'weight', v.parse(bodySchemas.blocksOff, body).grossWeight);
    }
    case 'blocksOn':
      return touch('blocks-on');
    case 'takeOffRolled':
    case 'touchedDown': {
      const { runway } = v.parse(bodySchemas.touchedDown, body);
      await touch(kind === 'touchedDown' ? 'touchdown' : 'roll');
      return runway === undefined ? undefined : putDigits(scribe, 'runway', runway);
    }
    case 'liftedOff':
      return touch('liftoff');
    case 'gearMoved':
      return touch(`gear-${v.parse(bodySchemas.gearMoved, body).to}`);
    case 'coversReleased': {
      const { wing, clear, hung, altitude, command } = v.parse(bodySchemas.coversReleased, body);
      await touch(wing === 'R' ? 'covers-right' : 'covers-left');
      const all = sheet.panels.filter((panel) => panel.wing === wing).map(({ id }) => id);
      await nameCovers(scribe, clear ?? [], hung ?? [], all);
      await putMeasure(scribe, 'height', altitude);
      const COMMANDS = ['First', 'Second', 'Third'];
      return chooseChip(
        scribe,
        'command',
        command === undefined ? undefined : COMMANDS[command - 1],
      );
    }
    case 'levelledOff': {
      const { altitude, grossWeight } = v.parse(bodySchemas.levelledOff, body);
      await touch('level');
      await putMeasure(scribe, 'height', altitude);
      return putMeasure(scribe, 'weight', grossWeight);
    }
    case 'descentBegun':
      return touch('descend');
    case 'conditionReached': {
      const { leg } = v.parse(bodySchemas.conditionReached, body);
      await touch('cond-on');
      return chooseChip(scribe, 'leg', leg === undefined ? undefined : `Leg ${leg}`);
    }
    case 'turnStarted': {
      const { fromLeg, toLeg, lastedS } = v.parse(bodySchemas.turnStarted, body);
      await touch('turn-start');
      await chooseChip(scribe, 'fromLeg', fromLeg === undefined ? undefined : `Leg ${fromLeg}`);
      await chooseChip(scribe, 'toLeg', toLeg === undefined ? undefined : `Leg ${toLeg}`);
      return putNumber(scribe, 'lasted', lastedS, COUNT);
    }
    case 'testPointStarted':
    case 'testPointEnded':
    case 'testPointInterrupted':
    case 'testPointTerminated': {
      const { point, reason } = v.parse(bodySchemas.testPointTerminated, body);
      await touch(POINT_ACTS[kind]);
      await putWords(scribe, 'reason', reason);
      const card = sheet.testCards.find((each) => each.id === point);
      return chooseChip(scribe, 'point', `${point} ${card?.title}`);
    }
    case 'timeHackTaken': {
      const { shown, master } = v.parse(bodySchemas.timeHackTaken, body);
      await touch('hack');
      await putDigits(scribe, 'master', clockText(master).replaceAll(':', ''));
      for (const each of shown) {
        const digits = clockText(each.shown).replaceAll(':', '');
        await putDigits(scribe, `clock-${each.clock}`, digits);
      }
      return;
    }
    default:
      return enterFlowEvent(scribe, { kind, body }, touch);
  }
}

const POINT_ACTS = {
  testPointStarted: 'point-start',
  testPointEnded: 'point-end',
  testPointInterrupted: 'point-interrupt',
  testPointTerminated: 'point-terminate',
} as const;
