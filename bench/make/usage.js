// Loaded before a program that is measured (`node --import`): writes what it took when it ends.
import { writeFileSync } from 'node:fs';

process.on('exit', () => {
  const { userCPUTime, systemCPUTime, maxRSS } = process.resourceUsage();
  const taken = { cpu: (userCPUTime + systemCPUTime) / 1e6, megabytes: maxRSS / 1024 };
  if (process.env.BENCH_USAGE) writeFileSync(process.env.BENCH_USAGE, JSON.stringify(taken));
});
