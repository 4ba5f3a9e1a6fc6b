import { z } from 'zod';
import { PASSWORD_MAX } from '@/lib/people/rules/passwords';

export const changePasswordForm = z.object({
  currentPassword: z.string('Enter your present password').max(1000, 'This is longer than any password here'),
  newPassword: z
    .string('Enter a new password')
    .max(1000, `The new password may have ${PASSWORD_MAX} characters at most`),
});
