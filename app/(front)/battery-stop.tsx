import { Notice } from '@/app/ui/page/notice';
import type { BatteryVerdict } from '@/lib/parcels/rules/battery';
import type { WorkshopCard } from '@/lib/workshop/card';

/** Why a unit must not be posted because of its battery, what to do instead, and how to reach us. */
export function BatteryStop({ verdict, workshop }: { verdict: BatteryVerdict; workshop: WorkshopCard }) {
  return (
    <>
      <Notice kind="stop" heading="Why">
        {verdict.reasons.map((reason) => (
          <p key={reason}>{reason}</p>
        ))}
      </Notice>
      <section className="prose" aria-labelledby="instead">
        <h2 id="instead">What to do instead</h2>
        <ol>
          {verdict.insteadSteps.map((step) => (
            <li key={step}>{step}</li>
          ))}
        </ol>
        <p>
          We are glad to help you with the next step. Write to{' '}
          <a href={`mailto:${workshop.email}`}>{workshop.email}</a> or call{' '}
          <a href={`tel:${workshop.phone.replace(/\s/g, '')}`}>{workshop.phone}</a>.
        </p>
      </section>
    </>
  );
}
