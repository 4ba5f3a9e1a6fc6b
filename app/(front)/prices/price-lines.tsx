import { TextLink } from '@/app/ui/page/text-link';
import { workingDaysWords } from '@/lib/calendar/working';
import type { ListedModel } from '@/lib/catalogue/price-list';
import { coverInBrief } from '@/lib/catalogue/rules/cover-words';
import { unitName } from '@/lib/catalogue/rules/unit-name';

/** One model of the price list, set like a printed tariff: name, dotted line, price, and the small print below. */
export function PriceLines({ model, money }: { model: ListedModel; money: (minor: number) => string }) {
  return (
    <section aria-label={unitName(model)} className="break-inside-avoid pb-6">
      <h3>
        <TextLink href={`/prices/${model.slug}`} className="inline-block py-1.5">
          {unitName(model)}
        </TextLink>
      </h3>
      <ul>
        {model.repairs.map((repair) => (
          <li key={repair.id} className="border-b border-rule pt-1 pb-2">
            <div className="flex items-baseline gap-2">
              <TextLink href={`/prices/${model.slug}#${repair.slug}`} className="inline-block py-1.5">
                {repair.name}
              </TextLink>
              <span className="grow border-b-2 border-dotted border-edge" aria-hidden="true" />
              <strong className="whitespace-nowrap">{money(repair.grossMinor)}</strong>
            </div>
            <p className="text-small text-soft">
              {workingDaysWords(repair.workingDays)} <span aria-hidden="true">·</span> cover:{' '}
              {coverInBrief(repair)}
            </p>
          </li>
        ))}
      </ul>
    </section>
  );
}
