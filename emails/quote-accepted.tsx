import { JobPage, Next, Para, Title } from './frame';
import type { Writer } from './letter';
import { cost } from './words';

export const quoteAccepted: Writer<'quote-accepted'> = (facts, setting) => ({
  to: 'customer',
  subject: `You said yes: quote ${setting.job.number}`,
  summary: 'One more step: book the repair, so that we expect your parcel.',
  body: (
    <>
      <Title>You said yes</Title>
      <Para>
        Thank you. The price for the repair of {setting.job.unit} is agreed: {cost(facts.gross, setting)}. If
        it was not you, tell us.
      </Para>
      <JobPage setting={setting}>Go on to book</JobPage>
      <Next
        what="You book in a few short steps. What you told us is filled in. Then you get a packing slip and post the unit."
        when="When it suits you. The agreed price stands."
        costs={`${cost(facts.gross, setting)}, to pay when the repair is done. You pay nothing now.`}
      />
    </>
  ),
});
