import { existsSync, readFileSync } from 'node:fs';

/**
 * Tests passed and failed by vitest's JSON report, and the sentence for what a mere count would hide. A file that
 * could not be loaded, a run that reported nothing and a run that ended badly with no failing test each count as one
 * failure: nothing that went wrong may add up to zero.
 */
export function countReport(path, code) {
  if (!existsSync(path)) return { passed: 0, failed: 1, note: 'the run ended without a report' };
  const report = JSON.parse(readFileSync(path, 'utf8'));
  const unloaded = report.testResults.filter(
    (file) => file.status === 'failed' && !file.assertionResults.some(({ status }) => status === 'failed'),
  ).length;
  const skipped = report.numPendingTests + report.numTodoTests;
  const notes = [];
  if (unloaded > 0) notes.push(`${unloaded} files could not be run`);
  if (skipped > 0) notes.push(`${skipped} skipped`);
  let failed = report.numFailedTests + unloaded;
  if (code !== 0 && failed === 0) {
    failed = 1;
    notes.push('the run ended with an error outside its tests');
  }
  if (code === 0 && report.numPassedTests === 0 && failed === 0) {
    failed = 1;
    notes.push('no test ran');
  }
  return { passed: report.numPassedTests, failed, note: notes.join(', ') };
}
