import { numberWords } from '../../record/readingWords.ts';
import type { Told } from './sentence.ts';
import { counted, listed, parts, quoted, type Standing, type Teller } from './teller.ts';

/** After the flight: custody, inspection, squawks, maintenance, laboratory, signatures. */
export function groundTold(teller: Teller): readonly Told[] {
  return teller.standing.flatMap((one) => entryTold(teller, one));
}

function entryTold({ clock }: Teller, { by, at, entry }: Standing): readonly Told[] {
  const time = clock(at, by);
  const told = (text: string): readonly Told[] => [{ at, text, entries: [by] }];
  switch (entry.kind) {
    case 'sampleHandedOver': {
      const { samples, to, seals } = entry.body;
      const sealed = seals === undefined ? '' : `, seals ${quoted(seals)}`;
      return told(
        `Samples ${listed(samples.map(quoted))} were handed to ${quoted(to)} at ${time}${sealed}.`,
      );
    }
    case 'labResultReceived': {
      const { sample, meanSizeMicrometre, numberPerLitre, method } = entry.body;
      const found = parts(
        meanSizeMicrometre !== undefined && `mean size ${numberWords(meanSizeMicrometre)}\u00a0µm`,
        numberPerLitre !== undefined && `${numberWords(numberPerLitre)} a litre`,
        method && quoted(method),
      );
      return told(
        `The laboratory reported on sample ${quoted(sample)}${found === '' ? '' : `: ${found}`}.`,
      );
    }
    case 'panelsInspected': {
      const { findings } = entry.body;
      const said = findings.map(({ panel, finding }) => `${panel} ${quoted(finding)}`);
      return told(
        `The inspection at ${time} found${said.length === 0 ? ' nothing that was written' : `: ${said.join(', ')}`}.`,
      );
    }
    case 'squawkRaised': {
      const { squawk, panels, words, severity, labourH } = entry.body;
      const beside = parts(
        severity && quoted(severity),
        labourH !== undefined && `${numberWords(labourH)}\u00a0h asked for`,
      );
      return told(
        `Squawk ${quoted(squawk)} on ${listed(panels)}: ${quoted(words)}${beside === '' ? '' : `, ${beside}`}.`,
      );
    }
    case 'maintenanceDone': {
      const { squawk, panels, action, material, labourH } = entry.body;
      const beside = parts(
        squawk && `for ${quoted(squawk)}`,
        material && `with ${quoted(material)}`,
        labourH !== undefined && `${numberWords(labourH)}\u00a0h`,
      );
      const where = panels.length === 0 ? '' : ` on ${listed(panels)}`;
      return told(`Maintenance${where}: ${quoted(action)}${beside === '' ? '' : `, ${beside}`}.`);
    }
    case 'logSigned': {
      const { signedBy, openItems } = entry.body;
      const open =
        openItems.length === 0 ? 'nothing open' : `${counted(openItems.length, 'open item')} named`;
      return told(`The log was signed at ${time} by ${listed(signedBy.map(quoted))}, ${open}.`);
    }
    default:
      return [];
  }
}
