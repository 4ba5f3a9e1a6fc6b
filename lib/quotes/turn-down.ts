import { type ToCustomer, tellCustomer } from './ask-customer';

/**
 * The workshop cannot or will not repair it, or is asked to close it, and says why. A price that was sent, or agreed to and
 * not booked, ends with it. The row of the quote decides against a booking or an answer at the same moment.
 */
export async function turnDown(o: ToCustomer): Promise<void> {
  await tellCustomer(o, 'turn-down');
}
