/** Ends this process when the launcher that holds its database is gone; the mail worker does so by itself. */
export function endWithLauncher(): void {
  if (process.connected) process.on('disconnect', () => process.exit(1));
}
