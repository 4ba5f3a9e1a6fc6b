import { Facts } from '@/app/ui/docket/facts';
import { connectorSheet, type PinPair } from '@/lib/bench/rules/connector-sheet';
import type { PinTable } from '@/lib/bench/rules/pin-table';

/** What is derived from a pin table: pins to follow, pairs that must be open, pairs that may be joined. */
export function TableFacts({ table }: { table: PinTable }) {
  const { continuity, mustBeOpen, mayBeJoined } = connectorSheet(table);
  return (
    <Facts
      items={[
        { term: `Followed, ${continuity.length}`, text: continuity.map((pin) => pin.pin).join(', ') },
        { term: `Must be open, ${mustBeOpen.length}`, text: pairsText(mustBeOpen) },
        { term: `May be joined, ${mayBeJoined.length}`, text: pairsText(mayBeJoined) || 'none' },
      ]}
    />
  );
}

function pairsText(pairs: readonly PinPair[]): string {
  return pairs.map(({ a, b }) => `${a.pin}:${b.pin}`).join(', ');
}
