import type { FlightSheet, Instrument, Wing } from '../sheet.ts';

/** What the reducer looks up in the flight sheet, made once for each flight sheet. */
export interface SheetIndex {
  readonly instruments: ReadonlyMap<string, Instrument>;
  readonly wings: Readonly<Record<Wing, WingParts>>;
  readonly panelWing: ReadonlyMap<string, Wing>;
}

export interface WingParts {
  readonly panels: readonly string[];
  /** Trailing-edge probes: those that a count out of so many speaks of. Rakes are read one by one. */
  readonly probes: readonly string[];
  readonly probeNames: ReadonlySet<string>;
  /** Serviceable trailing-edge probes of each panel: a panel's state is worked out from these. */
  readonly probesOf: Readonly<Record<string, readonly string[]>>;
}

export function noSheetIndex(): SheetIndex {
  const none: WingParts = { panels: [], probes: [], probeNames: new Set(), probesOf: {} };
  return { instruments: new Map(), wings: { L: none, R: none }, panelWing: new Map() };
}

export function sheetIndex(sheet: FlightSheet): SheetIndex {
  return {
    instruments: new Map(sheet.instruments.map((instrument) => [instrument.id, instrument])),
    wings: { L: wingParts(sheet, 'L'), R: wingParts(sheet, 'R') },
    panelWing: new Map(sheet.panels.map((panel) => [panel.id, panel.wing])),
  };
}

function wingParts(sheet: FlightSheet, wing: Wing): WingParts {
  const probes = sheet.probes.filter(
    (probe) => probe.wing === wing && probe.form === 'trailingEdgeTotal',
  );
  const panels = sheet.panels.filter((panel) => panel.wing === wing).map((panel) => panel.id);
  return {
    panels,
    probes: probes.map((probe) => probe.id),
    probeNames: new Set(probes.map((probe) => probe.id)),
    probesOf: Object.fromEntries(
      panels.map((panel) => [
        panel,
        probes.filter((probe) => probe.panel === panel && probe.serviceable).map(({ id }) => id),
      ]),
    ),
  };
}
