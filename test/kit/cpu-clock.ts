/** Seconds this process has worked: what other programs do at the same time changes no plan. */
export function cpuClock(): number {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1e6;
}
