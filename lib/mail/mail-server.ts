import { config } from '@/lib/config';

/** Whether messages leave at all, or are kept to be read in the workshop. */
export function hasMailServer(): boolean {
  return config.smtpUrl !== undefined;
}

/** What is said of a message that leaves, or the other words where none does. */
export function ifMailed(words: string, otherwise = ''): string {
  return hasMailServer() ? words : otherwise;
}
