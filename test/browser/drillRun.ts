import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { runDrill } from './drill.ts';
import { linesOnDisk, type Seen } from './drillJudge.ts';
import { inCruise } from './inCruise.ts';
import { leaveFlightOpen, preparedSite } from './prepared.ts';
import { Scribe } from './scribe.ts';
import { seeded } from './seeded.ts';
import { Tablet } from './tablet.ts';
import { fromFlyToDebrief, savedFile } from './timelineFiles.ts';

const START = Date.UTC(2032, 5, 2, 12, 0, 0);

/**
 * The drill on a new tablet, with its last word: the timeline file saved by touch after the last kill.
 *
 * @returns the file, and the lines that the database held when it was saved
 */
export async function drillOnNewTablet(given: {
  readonly executablePath: string;
  readonly rounds: number;
  readonly seed: number;
  readonly onRound: (seen: Seen) => void;
}): Promise<{ readonly file: string; readonly disk: readonly string[] }> {
  const { executablePath, rounds, seed, onRound } = given;
  const profile = mkdtempSync(join(tmpdir(), 'kneeline-drill-'));
  const site = await preparedSite();
  try {
    const prepared = await Tablet.launch(site.origin, { profile, executablePath });
    await leaveFlightOpen(prepared.page, site.origin, inCruise(START));
    await prepared.close();
    const tablet = await runDrill(
      {
        origin: site.origin,
        profile,
        executablePath,
        startMs: START,
        rounds,
        random: seeded(seed),
      },
      onRound,
    );
    const scribe = new Scribe(tablet, START + (rounds + 1) * 600_000);
    await fromFlyToDebrief(scribe);
    const { text } = await savedFile(scribe);
    const disk = await linesOnDisk(tablet.page);
    await tablet.close();
    return { file: text, disk };
  } finally {
    await site.close();
    rmSync(profile, { recursive: true, force: true });
  }
}
