import type { Reporter, TestModule } from 'vitest/node';
import { printedRows } from './printedRows.ts';
import type { Row } from './rows.ts';

/** Prints the table of requirements after a run that measured any. */
export default class TableReporter implements Reporter {
  onTestRunEnd(modules: readonly TestModule[]): void {
    const rows = modules.flatMap((module) =>
      [...module.children.allTests()].flatMap((test): readonly Row[] => test.meta().rows ?? []),
    );
    if (rows.length > 0) process.stdout.write(`\n${printedRows(rows)}\n`);
  }
}
