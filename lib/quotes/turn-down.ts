import { type ToCustomer, tellCustomer } from './ask-customer';

/** The workshop cannot or will not repair it, and says why. */
export async function turnDown(o: ToCustomer): Promise<void> {
  await tellCustomer(o, 'turn-down');
}
