import type { ProbeHistory } from '../encounters/probeHistory.ts';
import { percent, remark, type CellsOf, type ResultTable } from './table.ts';

/** Each probe at each setting of the clear-air runs, one a row; a probe without any has one row that says why. */
export function probesTable(history: readonly ProbeHistory[], { entries }: CellsOf): ResultTable {
  return {
    name: 'probes',
    header: [
      'probe',
      'panel',
      'clear_runs',
      'not_laminar_runs',
      'setting',
      'runs_at_setting',
      'laminar_at_setting_pct',
      'cover_hung',
      'inspection',
      'remark',
      'entries',
    ],
    rows: history.flatMap(({ probe, panel, inClearRuns, coverHung, inspection }) => {
      const value = inClearRuns.kind === 'answer' ? inClearRuns.value : null;
      const ids = inClearRuns.kind === 'answer' ? inClearRuns.how.entries : inClearRuns.entries;
      const settings = value === null ? [null] : value.bySetting;
      return settings.map((one) => [
        probe,
        panel,
        value?.clearRuns ?? null,
        value?.notLaminarRuns ?? null,
        one?.setting ?? null,
        one?.runs ?? null,
        percent(one?.laminarFraction ?? null),
        String(coverHung),
        inspection?.words ?? null,
        remark(inClearRuns),
        entries([...ids, ...(inspection === null ? [] : [inspection.by])]),
      ]);
    }),
  };
}
