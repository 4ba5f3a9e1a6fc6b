import { LinkButton } from '@/app/ui/page/button';
import { Notice } from '@/app/ui/page/notice';
import { PageHead } from '@/app/ui/page/page-head';

/** Where a booking ends whose repair was taken off the price list meanwhile, or whose agreed price is no more. */
export function NotOffered({ isQuote }: { isQuote: boolean }) {
  return (
    <>
      <PageHead title="This cannot be booked any more" />
      <Notice kind="stop" heading="Nothing is booked, and it costs nothing" role="alert">
        <p>
          {isQuote
            ? 'The price that you agreed to is not on offer any more.'
            : 'This repair was taken off the price list while you were booking.'}{' '}
          Please do not post the unit yet.
        </p>
      </Notice>
      <p className="page-actions">
        <LinkButton href="/quote/ask">Ask for a price</LinkButton>
        <LinkButton href="/prices" kind="second">
          Look at the price list
        </LinkButton>
      </p>
    </>
  );
}
