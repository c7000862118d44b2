/** What failed in one suite, in a few lines each, from the account that vitest writes as JSON. */
import { relative } from 'node:path';

/** Enough for an assertion's sentence and the line it stands in, without a whole page dumped by a locator. */
const linesOfMessage = 6;

const shortened = (message) =>
  message
    // eslint-disable-next-line no-control-regex -- colours of a terminal
    .replace(/\u001B\[[0-9;]*m/g, '')
    .split('\n')
    .filter((line) => line.trim() !== '')
    .slice(0, linesOfMessage)
    .map((line) => `    ${line}`)
    .join('\n');

/**
 * One text for each failed test: file, name, the head of its message; and for each file that broke outside a test.
 * @param report vitest's JSON report
 * @param {string} folder the project's folder, for short file names
 * @returns {string[]}
 */
export function failuresOf(report, folder) {
  return report.testResults.flatMap((file) => {
    const path = relative(folder, file.name);
    const failed = file.assertionResults.filter((test) => test.status === 'failed');
    if (failed.length === 0 && file.status === 'failed') return [`${path}\n${shortened(file.message ?? '')}`];
    return failed.map((test) => `${path} > ${test.fullName}\n${shortened(test.failureMessages.join('\n'))}`);
  });
}
