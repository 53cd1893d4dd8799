import type { Measure } from '../../src/record/measure.ts';
import type { FlightSheet, Instrument, Probe, TestCard } from '../../src/record/sheet.ts';
import type { SheetSection } from '../../src/record/sheetCheck.ts';
import type { Scribe } from './scribe.ts';

/** Opens a copy of the flight sheet of the flight that came with the app. */
export async function copySheet(scribe: Scribe): Promise<void> {
  await scribe.tap({ starts: 'days.copy=' });
  await scribe.tablet.shown('sheet.toOpen');
}

async function toSection(scribe: Scribe, section: SheetSection): Promise<void> {
  await scribe.tap(`section=${section}`);
}

/** Types a whole flight sheet into a blank one: everything that a number rests on, and the names. */
export async function typeSheet(scribe: Scribe, sheet: FlightSheet): Promise<void> {
  await scribe.tap('days.new');
  await typeFlight(scribe, sheet);
  await typeAircraft(scribe, sheet);
  await typeConditions(scribe, sheet);
  await typeWing(scribe, sheet);
  await typeInstruments(scribe, sheet);
  await toSection(scribe, 'cards');
  for (const [index, card] of sheet.testCards.entries()) {
    await scribe.tap('cards.add');
    await typeCard(scribe, index, card);
  }
  await toSection(scribe, 'clocks');
  for (const [index, clock] of sheet.clocks.entries()) {
    await scribe.put(`sheet.clocks.${index}.id`, clock.id);
    await scribe.put(`sheet.clocks.${index}.owner`, clock.owner);
    await scribe.put(`sheet.clocks.${index}.resolutionS`, String(clock.resolutionS));
    await scribe.tap(`sheet.clocks.${index}.scale=${clock.scale}`);
  }
  await toSection(scribe, 'limits');
  await scribe.put('sheet.limits.readingEveryS', String(sheet.limits.readingEveryS));
  await scribe.put('sheet.limits.samplerPlannedS', String(sheet.limits.samplerPlannedS));
  await scribe.put('sheet.limits.coversAfterGearUpS', String(sheet.limits.coversAfterGearUpS));
}

async function typeFlight(scribe: Scribe, sheet: FlightSheet): Promise<void> {
  await toSection(scribe, 'flight');
  await scribe.put('sheet.title', sheet.title);
  await scribe.put('sheet.revision', sheet.revision);
  await scribe.tap(`sheet.massUnit=${sheet.massUnit}`);
  await scribe.tap(`sheet.heightUnit=${sheet.heightUnit}`);
  for (const [index, leg] of sheet.legs.entries()) {
    await scribe.tap('legs.add');
    await scribe.put(`sheet.legs.${index}`, leg);
  }
}

async function typeAircraft(scribe: Scribe, sheet: FlightSheet): Promise<void> {
  const { aircraft, engineMap } = sheet;
  await toSection(scribe, 'aircraft');
  await scribe.put('sheet.aircraft.mark', aircraft.mark);
  await putMeasure(scribe, 'sheet.aircraft.wingArea', aircraft.wingArea);
  await scribe.tap(`sheet.aircraft.engineCount=${aircraft.engineCount}`);
  await scribe.tap(`sheet.aircraft.suctionDrive=${aircraft.suctionDrive}`);
  await putNumber(
    scribe,
    'sheet.aircraft.machSensitivitySuctionOff',
    aircraft.machSensitivitySuctionOff,
  );
  await putNumber(
    scribe,
    'sheet.aircraft.machSensitivitySuctionOn',
    aircraft.machSensitivitySuctionOn,
  );
  if (engineMap !== undefined) {
    await scribe.tap('sheet.engineMap');
    await putMeasure(scribe, 'sheet.engineMap.idleFlow', engineMap.idleFlow);
    await putMeasure(
      scribe,
      'sheet.engineMap.idleStandardUncertainty',
      engineMap.idleStandardUncertainty,
    );
    await putMeasure(scribe, 'sheet.engineMap.flowPerThrust', engineMap.flowPerThrust);
  }
  await toSection(scribe, 'weights');
  const { weights } = sheet;
  await putMeasure(scribe, 'sheet.weights.ramp', weights.ramp);
  await putMeasure(scribe, 'sheet.weights.zeroFuel', weights.zeroFuel);
  await putMeasure(scribe, 'sheet.weights.rampFuel', weights.rampFuel);
  await putMeasure(
    scribe,
    'sheet.weights.grossWeightStandardUncertainty',
    weights.grossWeightStandardUncertainty,
  );
}

async function typeConditions(scribe: Scribe, sheet: FlightSheet): Promise<void> {
  const { tolerances, borrowedBaseline } = sheet;
  await toSection(scribe, 'condition');
  await putNumber(scribe, 'sheet.condition.mach', sheet.condition.mach);
  await putMeasure(scribe, 'sheet.condition.pressureAltitude', sheet.condition.pressureAltitude);
  await putNumber(scribe, 'sheet.tolerances.mach', tolerances.mach);
  await putNumber(scribe, 'sheet.tolerances.machRatePerMin', tolerances.machRatePerMin);
  await putMeasure(scribe, 'sheet.tolerances.altitude', tolerances.altitude);
  await putMeasure(scribe, 'sheet.tolerances.climb', tolerances.climb);
  await putNumber(scribe, 'sheet.machHoldStandardUncertainty', sheet.machHoldStandardUncertainty);
  await putNumber(scribe, 'sheet.timeDoubts.touchS', sheet.timeDoubts.touchS);
  await putNumber(scribe, 'sheet.timeDoubts.readingS', sheet.timeDoubts.readingS);
  await putNumber(scribe, 'sheet.timeDoubts.lateS', sheet.timeDoubts.lateS);
  await toSection(scribe, 'baseline');
  const target = sheet.targetReductionFraction;
  await putNumber(
    scribe,
    'sheet.targetReductionFraction',
    target === undefined ? undefined : Number((target * 100).toPrecision(12)),
  );
  if (borrowedBaseline !== undefined) {
    await scribe.tap('sheet.borrowedBaseline');
    const at = 'sheet.borrowedBaseline';
    await putNumber(scribe, `${at}.weightElasticity`, borrowedBaseline.weightElasticity);
    await putNumber(scribe, `${at}.standardUncertainty`, borrowedBaseline.standardUncertainty);
    await scribe.put(`${at}.from`, borrowedBaseline.from);
  }
}

/** Panels and probes by the two keys that make all of them; the sheet must be one that they can make. */
async function typeWing(scribe: Scribe, sheet: FlightSheet): Promise<void> {
  const [panel] = sheet.panels;
  if (panel === undefined) {
    return;
  }
  await toSection(scribe, 'panels');
  await scribe.put('panels.n', String(sheet.panels.length / 2));
  await scribe.put('panels.area', String(panel.area.value));
  await scribe.tap('panels.make');
  await toSection(scribe, 'probes');
  await scribe.tap(`probes.k=${sheet.probes.length / sheet.panels.length}`);
  await scribe.tap('probes.make');
}

async function typeInstruments(scribe: Scribe, sheet: FlightSheet): Promise<void> {
  await toSection(scribe, 'instruments');
  await scribe.tap('instruments.usual');
  for (const instrument of sheet.instruments) {
    await openInstrument(scribe, instrument.id);
    await typeInstrument(scribe, instrument);
    await scribe.tap('item.back');
  }
}

/** Opens the instrument of that name from the list and returns the beginning of its fields' names. */
async function openInstrument(scribe: Scribe, id: string): Promise<void> {
  await scribe.tap(await itemNamed(scribe, 'instruments', id));
}

async function typeInstrument(scribe: Scribe, instrument: Instrument): Promise<void> {
  const at = await openItem(scribe, 'instruments');
  await scribe.put(`${at}.name`, instrument.name);
  await scribe.tap(`${at}.unit=${instrument.unit}`);
  await scribe.tap(`${at}.format.wholeDigits=${instrument.format.wholeDigits}`);
  await scribe.tap(`${at}.format.decimals=${instrument.format.decimals}`);
  await putNumber(scribe, `${at}.resolution`, instrument.resolution);
  await putNumber(scribe, `${at}.repeatability`, instrument.repeatability);
  await typeCalibration(scribe, at, instrument);
}

async function typeCalibration(scribe: Scribe, at: string, { calibration }: Instrument) {
  await putNumber(scribe, `${at}.calibration.correction`, calibration.correction);
  await putNumber(
    scribe,
    `${at}.calibration.residualStandardUncertainty`,
    calibration.residualStandardUncertainty,
  );
}

/** Puts other calibrations into the instruments that the open flight sheet has already. */
export async function typeCalibrations(
  scribe: Scribe,
  instruments: readonly Instrument[],
): Promise<void> {
  await toSection(scribe, 'instruments');
  for (const instrument of instruments) {
    await openInstrument(scribe, instrument.id);
    await typeCalibration(scribe, await openItem(scribe, 'instruments'), instrument);
    await scribe.tap('item.back');
  }
}

/** Adds one probe to the open flight sheet. */
export async function addProbe(scribe: Scribe, probe: Omit<Probe, 'area' | 'serviceable'>) {
  await toSection(scribe, 'probes');
  await scribe.tap('probes.add');
  const at = await openItem(scribe, 'probes');
  await scribe.put(`${at}.id`, probe.id);
  await scribe.tap(`${at}.wing=${probe.wing}`);
  await scribe.tap(`${at}.panel=${probe.panel}`);
  await scribe.tap(`${at}.form=${probe.form}`);
}

async function typeCard(scribe: Scribe, index: number, card: TestCard): Promise<void> {
  const at = `sheet.testCards.${index}`;
  await scribe.put(`${at}.id`, card.id);
  await scribe.put(`${at}.title`, card.title);
  await scribe.tap(`${at}.suction=${card.suction}`);
  await scribe.put(`${at}.setting`, card.setting);
  await putNumber(scribe, `${at}.order`, card.order);
  await putNumber(scribe, `${at}.priority`, card.priority);
  await putNumber(scribe, `${at}.minimumReadings`, card.minimumReadings);
  await scribe.tap('item.back');
}

/** Name of the list key whose words begin with this id. */
async function itemNamed(scribe: Scribe, list: string, id: string): Promise<string> {
  await scribe.tablet.shown({ starts: `${list}.item=` });
  const found = (await scribe.tablet.targets()).find(
    ({ act, words }) => act.startsWith(`${list}.item=`) && words.split(/\s/)[0] === id,
  );
  if (found === undefined) {
    throw new Error(`no ${id} among the ${list}`);
  }
  return found.act;
}

/** Beginning of the field names of the row that is open, told by its name field. */
async function openItem(scribe: Scribe, list: string): Promise<string> {
  await scribe.tablet.shown('item.back');
  const name = (await scribe.tablet.targets()).find(({ act }) =>
    new RegExp(`^sheet\\.${list}\\.\\d+\\.id$`).test(act),
  );
  if (name === undefined) {
    throw new Error(`no row of the ${list} is open`);
  }
  return name.act.slice(0, -'.id'.length);
}

async function putNumber(scribe: Scribe, act: string, value: number | undefined): Promise<void> {
  if (value !== undefined) {
    await scribe.put(act, String(value));
  }
}

async function putMeasure(
  scribe: Scribe,
  act: string,
  measure: Measure | undefined,
): Promise<void> {
  if (measure !== undefined) {
    await scribe.put(act, String(measure.value));
    await scribe.tap(`${act}.unit=${measure.unit}`);
  }
}
