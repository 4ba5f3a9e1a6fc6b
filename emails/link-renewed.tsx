import { JobPage, Next, Para, Title } from './frame';
import type { Writer } from './letter';
import { agreedCost, reach, thing } from './words';

export const linkRenewed: Writer<'link-renewed'> = (_facts, setting) => {
  const what = thing(setting);
  return {
    to: 'customer',
    subject: `New private link to ${what} ${setting.job.number}`,
    summary: `Older links to this ${what} no longer open it.`,
    body: (
      <>
        <Title>{`Your ${what} has a new private link`}</Title>
        <JobPage setting={setting}>{`Open the ${what}`}</JobPage>
        <Para>
          {`Older links to this ${what} no longer open it. Whoever has the new one can see the ${what} and answer for you, so pass it on only to people you trust.`}
        </Para>
        <Next
          what={
            what === 'job'
              ? 'Use the new link from now on. The job itself goes on as before.'
              : 'Use the new link from now on. A price that waits for your answer is held as before.'
          }
          when="The new link works now."
          costs={what === 'job' ? agreedCost(setting) : 'The new link costs nothing and changes no price.'}
        />
        {reach(setting) ? <Para>Did you not expect this? {reach(setting)}</Para> : null}
      </>
    ),
  };
};
