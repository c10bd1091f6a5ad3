/**
 * The command line: words in, exit status out. Results go to standard output, one line a take with tabs between the
 * columns; everything else (progress, what went wrong) goes to standard error, one line each.
 */
export { runCommand } from './run-command.js';
