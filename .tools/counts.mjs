// Reads how many tests passed and failed out of a test report.
import { readFileSync } from 'node:fs';

/**
 * @param {string} file a JSON report; a run that could not start leaves none
 * @param {number | null} status exit code of the run
 * @returns {{ passed: number, failed: number }} at least one failure unless the run went well and held a test
 */
export function countTests(file, status) {
  let report;
  try {
    report = JSON.parse(readFileSync(file, 'utf8'));
  } catch {
    return { passed: 0, failed: 1 };
  }
  const passed = report.numPassedTests;
  // A test that was skipped, or a file that failed to load, must not look like a pass.
  const skipped = report.numPendingTests + report.numTodoTests;
  const unloaded = report.testResults.filter(
    (/** @type {{ status: string, assertionResults: unknown[] }} */ result) =>
      result.status === 'failed' && result.assertionResults.length === 0,
  ).length;
  const failed = report.numFailedTests + skipped + unloaded;
  const sound = status === 0 && passed > 0;
  return { passed, failed: failed === 0 && !sound ? 1 : failed };
}
