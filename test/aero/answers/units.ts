import * as units from '../../../src/aero/units.ts';
import { valueOf, type Answers } from '../referenceRow.ts';

function oneIn(unit: units.Unit): number {
  return valueOf(units.toSi({ value: 1, unit })).value;
}

function atmosphereIn(unit: units.Unit): number {
  return valueOf(units.fromSi({ value: units.PASCALS_PER_STANDARD_ATMOSPHERE, unit }));
}

export const unitAnswers: Answers = {
  '1 foot': () => oneIn('ft'),
  '1 inch': () => oneIn('in'),
  '1 nautical mile': () => oneIn('nmi'),
  '1 knot': () => oneIn('kt'),
  '1 pound (avoirdupois)': () => oneIn('lb'),
  '1 pound-force': () => oneIn('lbf'),
  '1 slug': () => oneIn('slug'),
  '1 pound-force per square inch': () => oneIn('psi'),
  '1 inch of mercury, conventional': () => oneIn('inHg'),
  '1 inch of mercury (32 degF)': () => oneIn('inHg@32F'),
  '1 inch of mercury (60 degF)': () => oneIn('inHg@60F'),
  '1 inch of water, conventional': () => oneIn('inH2O'),
  '1 inch of water (39.2 degF, about 4 degC)': () => oneIn('inH2O@39.2F'),
  '1 inch of water (60 degF)': () => oneIn('inH2O@60F'),
  '1 gallon (U.S.)': () => oneIn('USgal'),
  '1 gallon (Imperial)': () => oneIn('impgal'),
  '1 standard atmosphere': () => units.PASCALS_PER_STANDARD_ATMOSPHERE,
  '1 millimetre of water, conventional': () => oneIn('inH2O') / 25.4,
  '1 pound, exact definition': () => oneIn('lb'),
  '1 pound-force = exact pound times standard gravity': () => oneIn('lbf'),
  '1 inch of water, conventional = 25.4 x 9.80665 Pa': () => oneIn('inH2O'),
  '1 U.S. gallon = 231 cubic inches': () => oneIn('USgal'),
  '1 standard atmosphere in inches of water (conventional)': () => atmosphereIn('inH2O'),
  '1 standard atmosphere in inches of water (39.2 degF)': () => atmosphereIn('inH2O@39.2F'),
  '1 standard atmosphere in inches of water at 20 degC': () => atmosphereIn('inH2O@20C'),
  '1 standard atmosphere in inches of mercury (conventional)': () => atmosphereIn('inHg'),
};
