// Asks the registry whether a package that users install has a known fault of severity high or critical: then it fails.
// Where the registry cannot be asked (no network, or a mirror without advisories) it says so and lets the rest go on.
import { spawnSync } from 'node:child_process';

const words = ['audit', '--omit=dev', '--audit-level=high', '--json', '--fetch-retries=0', '--fetch-timeout=30000'];
const { stdout, error } = spawnSync('npm', words, { encoding: 'utf8', maxBuffer: 2 ** 26 });

/** What npm printed; null when that is no report. */
function reportIn(text) {
  try {
    const report = JSON.parse(text);
    return typeof report.metadata?.vulnerabilities?.total === 'number' ? report : null;
  } catch {
    return null;
  }
}

const report = reportIn(stdout ?? '');
if (report === null) {
  let reason = error?.message ?? 'npm gave no report';
  try {
    reason = JSON.parse(stdout).message ?? reason;
  } catch {
    // npm printed nothing that can be read: the reason stays as it is
  }
  console.warn(`audit: NOT DONE: advisories could not be asked for (${reason}); the packages were not checked`);
} else {
  const counts = report.metadata.vulnerabilities;
  const grave = (counts.high ?? 0) + (counts.critical ?? 0);
  console.log(`audit: ${counts.total} known faults in the packages users install, ${grave} of them high or critical`);
  for (const { name, severity, via } of Object.values(report.vulnerabilities ?? {})) {
    const titles = (via ?? []).map((one) => one.title ?? one).join('; ');
    console.log(`audit: ${severity}: ${name}: ${titles}`);
  }
  if (grave > 0) process.exitCode = 1;
}
