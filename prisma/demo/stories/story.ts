import type { Shop } from '../shop';

/** One unit's history, told from its booking; all numbers it draws come from a source named by its key. */
export type Story = { key: string; tell: (shop: Shop, key: string) => Promise<unknown> };
