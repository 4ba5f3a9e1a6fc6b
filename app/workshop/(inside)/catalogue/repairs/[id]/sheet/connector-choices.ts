import { listOwnTables } from '@/lib/bench/pin-table-records';
import { PIN_TABLES } from '@/lib/bench/rules/pin-tables/all';

export type ConnectorChoice = { value: string; label: string; group: string };

/** Connectors to choose from: those that ship, the workshop's own in use, and the one a check names already. */
export async function connectorChoices(named: string | null = null): Promise<ConnectorChoice[]> {
  const own = (await listOwnTables()).filter((row) => row.retiredAt === null || row.id === named);
  return [
    ...PIN_TABLES.map((table) => ({ value: table.key, label: table.name, group: 'Connectors' })),
    ...own.map((row) => ({
      value: row.id,
      label: row.retiredAt === null ? row.name : `${row.name} (retired)`,
      group: 'Our own pin tables',
    })),
  ];
}
