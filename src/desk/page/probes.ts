import type { ProbeHistory } from '../../analysis/encounters/probeHistory.ts';
import { percent } from './figures.ts';
import { headed, item } from './layout.ts';
import { namesWords } from './names.ts';
import type { Paper } from './paper.ts';

/** Probes that were not laminar all the time in clear air: what the ground crew looks at first. */
export function probesSection(paper: Paper): readonly string[] {
  const { probeHistory } = paper.results;
  const told = new Map<string, string[]>();
  for (const probe of probeHistory) {
    const words = probeWords(paper, probe);
    if (words !== null) told.set(words, [...(told.get(words) ?? []), probe.probe]);
  }
  const seen = probeHistory.some(({ inClearRuns }) => inClearRuns.kind === 'answer');
  return headed('Probes not always laminar in clear-air runs with suction on', [
    ...(seen ? [] : ['No probe was called in a clear-air run with suction on.']),
    ...(seen && told.size === 0 ? ['Every probe was laminar in every one.'] : []),
    ...[...told].flatMap(([words, probes]) => item(`${namesWords(probes)} ${words}`)),
  ]);
}

function probeWords(paper: Paper, probe: ProbeHistory): string | null {
  const { inClearRuns, coverHung, inspection, panel } = probe;
  if (inClearRuns.kind === 'noAnswer' || inClearRuns.value.notLaminarRuns === 0) return null;
  const { clearRuns, notLaminarRuns, bySetting } = inClearRuns.value;
  const byShare = new Map<string, string[]>();
  for (const { setting, laminarFraction } of bySetting) {
    const share = percent(laminarFraction);
    if (laminarFraction < 1) byShare.set(share, [...(byShare.get(share) ?? []), setting]);
  }
  const short = [...byShare].map(([share, settings]) => `${share} % at ${settings.join(' / ')}`);
  const laminar = bySetting.every(({ laminarFraction: f }) => f === 0)
    ? 'laminar at no setting'
    : `laminar ${short.join(', ')}`;
  return [
    `(${panel}) in ${notLaminarRuns} of ${clearRuns}`,
    laminar,
    ...(coverHung ? ['its cover hung'] : []),
    inspection === null
      ? 'not yet inspected'
      : inspection.verdict === 'notInspected'
        ? `not yet inspected ${paper.cite([inspection.by])}`
        : `inspection: ${inspection.words} ${paper.cite([inspection.by])}`,
  ].join('; ');
}
