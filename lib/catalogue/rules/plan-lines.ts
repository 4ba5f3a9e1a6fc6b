import type { FieldChange, ImportPlan } from './plan-import';
import { unitName } from './unit-name';

/** One family, model or repair that an import adds or changes, as a person reads it. */
export type PlanLine = {
  row: number;
  of: 'family' | 'model' | 'repair';
  name: string;
  /** Its address; that of a repair stands behind its model's. */
  address: string;
  isNew: boolean;
  fields: FieldChange[];
};

/** Everything a plan adds and changes, in the order of the file; a family before its model and the model before its repair. */
export function planLines(plan: ImportPlan): PlanLine[] {
  const families = plan.families.map(({ row, id, slug, data, fields }): PlanLine => {
    return { row, of: 'family', name: data.name, address: slug, isNew: id === null, fields };
  });
  const models = plan.models.map(({ row, id, slug, data, fields }): PlanLine => {
    const name = unitName(data);
    return { row, of: 'model', name, address: slug, isNew: id === null, fields };
  });
  const repairs = plan.repairs.map(({ row, id, slug, data, fields }): PlanLine => {
    const address = `${data.modelSlug}#${slug}`;
    return { row, of: 'repair', name: data.name, address, isNew: id === null, fields };
  });
  // Sorting keeps the order of equals, so within a row the family stays first.
  return [...families, ...models, ...repairs].sort((a, b) => a.row - b.row);
}
