import type { Reporter, TestModule } from 'vitest/node';
import { printedTrial } from './printedTrial.ts';
import type { TrialRow } from './trialRows.ts';

/** Prints the table of the trial after a run that did any of its tasks. */
export default class TrialReporter implements Reporter {
  onTestRunEnd(modules: readonly TestModule[]): void {
    const rows = modules.flatMap((module) =>
      [...module.children.allTests()].flatMap(
        (test): readonly TrialRow[] => test.meta().trial ?? [],
      ),
    );
    if (rows.length > 0) process.stdout.write(`\n${printedTrial(rows)}\n`);
  }
}
