import type { Permission } from '@/lib/people/rules/roles';
import type { MoveKey } from './stages';

/** Which kind of work each move of the staff belongs to, and so which roles may make it. */
const PERMISSION_OF: Partial<Record<MoveKey, Permission>> = {
  arrive: 'take-in',
  'undo-arrival': 'take-in',
  'is-of-booking': 'take-in',
  cancel: 'take-in',
  close: 'take-in',
  'take-up-again': 'take-in',
  'look-again': 'second-look',
  'set-aside': 'settings',
  'settle-unclaimed': 'settings',
  'ask-approval': 'money',
  'take-back-price': 'money',
  // An answer that was told: whoever may ask for it writes it down.
  approve: 'money',
  decline: 'money',
  'decline-the-rest': 'money',
  'approve-after-no': 'money',
  'approve-late': 'money',
  'approve-late-waiting': 'money',
  'decline-late': 'money',
  'decline-the-rest-late': 'money',
  'decline-the-rest-late-waiting': 'money',
  contest: 'money',
  withdraw: 'money',
  dispatch: 'dispatch',
  'came-back': 'dispatch',
  'undo-dispatch': 'dispatch',
  'pack-unrepaired': 'dispatch',
  'return-unrepaired': 'dispatch',
  'stop-repair': 'dispatch',
};

/** permissionOf('ask-approval') -> 'money'; whatever is not named is work at the bench. */
export function permissionOf(move: MoveKey): Permission {
  return PERMISSION_OF[move] ?? 'bench';
}
