/** Bytes for reading, of a thousand each as disks are sold: 1536 is '2 kB'; with one decimal from a million on, '9.5 MB'. */
export function sizeInWords(bytes: number): string {
  if (bytes < 1_000_000) return `${Math.ceil(bytes / 1000)} kB`;
  if (bytes < 1_000_000_000) return `${(bytes / 1_000_000).toFixed(1)} MB`;
  return `${(bytes / 1_000_000_000).toFixed(1)} GB`;
}
