import { unitName } from '@/lib/catalogue/rules/unit-name';
import { db } from '@/lib/db/client';
import type { Grouping } from './groupings';

/** What the things a figure is told by are called; a lot has its part beside its code, a repair its model. */
export async function namesOf(grouping: Grouping, ids?: readonly string[]): Promise<Map<string, string>> {
  const where = ids ? { id: { in: [...ids] } } : {};
  switch (grouping) {
    case 'repair': {
      const rows = await db.repair.findMany({
        where,
        select: { id: true, name: true, model: { select: { name: true } } },
      });
      return new Map(rows.map(({ id, name, model }) => [id, `${name}, ${model.name}`]));
    }
    case 'model': {
      const rows = await db.model.findMany({ where, select: { id: true, maker: true, name: true } });
      return new Map(rows.map((row) => [row.id, unitName(row)]));
    }
    case 'policy': {
      const rows = await db.policy.findMany({ where, select: { id: true, name: true } });
      return new Map(rows.map(({ id, name }) => [id, name]));
    }
    case 'part': {
      const rows = await db.part.findMany({ where, select: { id: true, name: true } });
      return new Map(rows.map(({ id, name }) => [id, name]));
    }
    case 'lot': {
      const rows = await db.lot.findMany({
        where,
        select: { id: true, code: true, part: { select: { name: true } } },
      });
      return new Map(rows.map(({ id, code, part }) => [id, `${code}, ${part.name}`]));
    }
    case 'supplier': {
      const rows = await db.lot.findMany({ distinct: ['supplier'], select: { supplier: true } });
      return new Map(rows.map(({ supplier }) => [supplier, supplier]));
    }
    case 'technician': {
      const rows = await db.user.findMany({ where, select: { id: true, name: true } });
      return new Map(rows.map(({ id, name }) => [id, name]));
    }
  }
}

export async function nameOf(grouping: Grouping, id: string): Promise<string | null> {
  return (await namesOf(grouping, [id])).get(id) ?? null;
}
